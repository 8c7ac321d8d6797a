import {ceilingHeights} from '../../../profile/ask/ceiling.ts';
import {otherSide} from '../../../profile/ask/otherSide.ts';
import {referenceSeat} from '../../../profile/ask/seats.ts';
import {finding} from '../../../profile/finding.ts';
import {isPlane} from '../../../profile/planes.ts';
import {askedAsymmetry, leastEarMetres, longestHomeMetres} from '../../../profile/practice.ts';
import type {Profile, TapeReading} from '../../../profile/types.ts';
import {metresPerFoot} from '../../../profile/units/lengthFormat.ts';
import {holdingOf} from '../../survey/holding.ts';
import {tapeSigmaMetres} from '../../survey/sigma.ts';
import {swappedDigits, tapeShownIn} from '../../survey/swappedDigits.ts';
import type {LengthSlip, TypedFinding} from './facts.ts';

/**
What strikes at once about a tape reading that was just typed, before it is computed with.

@param reading - May already be in the profile (as the same object) or not.
@returns Most serious first; empty where nothing strikes.
*/
export function remarkOnTape(profile: Profile, reading: TapeReading): TypedFinding[] {
	const end = speakerEnd(profile, reading);
	const {metres} = reading;
	const beyond = outsideRoom(profile, metres, end);
	if (beyond) return [beyond];
	if (isBetweenPoints(reading) && metres < leastEarMetres)
		return [finding('problem', 'tape-too-short', [end], {metres})];
	const found = farFromRepeats(profile, reading, end) ?? asymmetry(profile, reading, end);
	return found ? [found] : [];
}

/** The end that is not a seat; of two that are neither, the first. */
function speakerEnd(profile: Profile, {from, to}: TapeReading): string {
	return profile.seats.some(({id}) => id === from) ? to : from;
}

function isBetweenPoints({from, to}: TapeReading): boolean {
	return !isPlane(from) && !isPlane(to);
}

/** Longest straight line in the room, metres, from what is known of its size; `undefined` where length or width is not. */
function roomDiagonal(profile: Profile): {readonly metres: number; readonly length: number} | undefined {
	const {ceiling} = profile.room;
	const widthMetres = profile.room.widthMetres ?? tapedMetres(profile, 'wall:left', 'wall:right');
	const lengthMetres = profile.room.lengthMetres ?? tapedMetres(profile, 'wall:front', 'wall:back');
	if (widthMetres === undefined || lengthMetres === undefined) return undefined;
	const height = Math.max(...(ceiling ? ceilingHeights(ceiling) : [3]));
	return {
		metres: Math.hypot(widthMetres, lengthMetres, height),
		length: Math.max(widthMetres, lengthMetres),
	};
}

/** Longest reading between two planes; `undefined` where nobody taped there. */
function tapedMetres({tape = []}: Profile, from: string, to: string): number | undefined {
	const taped = tape.filter(other => !other.setAside && isSameStretch(other, {...other, from, to}));
	return taped.length > 0 ? Math.max(...taped.map(({metres}) => metres)) : undefined;
}

function outsideRoom(profile: Profile, metres: number, end: string): TypedFinding | undefined {
	const diagonal = roomDiagonal(profile);
	const limit = diagonal ? diagonal.metres * 1.02 + 0.05 : longestHomeMetres;
	if (metres <= limit) return undefined;
	const fits = (other: number) => other > leastEarMetres && other <= limit;
	const meant = fits(metres * metresPerFoot)
		? ({readIn: 'feet', metres: metres * metresPerFoot} as const)
		: fits(metres / 100)
			? ({readIn: 'centimetres', metres: metres / 100} as const)
			: undefined;
	return finding('problem', 'tape-beyond-room', [end], {
		metres,
		...(diagonal && {room: {lengthMetres: diagonal.length, diagonalMetres: diagonal.metres}}),
		...(meant && {meant}),
	});
}

function farFromRepeats(profile: Profile, reading: TapeReading, end: string): TypedFinding | undefined {
	const {metres} = reading;
	const repeats = (profile.tape ?? []).filter(
		other => other !== reading && !other.setAside && isSameStretch(other, reading),
	);
	if (repeats.length === 0) return undefined;
	const others = repeats.map(other => other.metres);
	const middleMetres = others.toSorted((a, b) => a - b)[Math.floor(others.length / 2)]!;
	const differenceMetres = metres - middleMetres;
	const limit = Math.max(
		0.02,
		3 * Math.SQRT2 * tapeSigmaMetres({...reading, metres: middleMetres}, holdingOf(profile)),
	);
	if (Math.abs(differenceMetres) <= limit) return undefined;
	return finding('doubt', 'tape-far-from-repeats', [end], {
		metres,
		differenceMetres,
		repeats: others.length,
		middleMetres,
		...slipOf(metres, middleMetres),
	});
}

/** The likely cause where the numbers tell. */
function slipOf(metres: number, expected: number): {readonly slip?: LengthSlip} {
	const difference = Math.abs(metres - expected);
	const tolerance = 0.012;
	if (Math.abs(difference - metresPerFoot) < tolerance) return {slip: 'one-foot'};
	if (Math.abs(difference - 1) < tolerance) return {slip: 'one-metre'};
	if (Math.abs(difference - 0.1) < tolerance / 2) return {slip: 'ten-centimetres'};
	if (Math.abs(metres / expected - 1 / metresPerFoot) < 0.05) return {slip: 'feet-as-metres'};
	if (Math.abs(metres / expected - metresPerFoot) < 0.005) return {slip: 'metres-as-feet'};
	return {};
}

function isSameStretch(a: TapeReading, b: TapeReading): boolean {
	return (a.from === b.from && a.to === b.to) || (a.from === b.to && a.to === b.from);
}

/** A difference of sides below this is no slip of the pen; with its digits swapped a length meets the other side this closely. */
const swapMetres = 0.1;
const swapToleranceMetres = 0.02;

function asymmetry(profile: Profile, reading: TapeReading, end: string): TypedFinding | undefined {
	const partner = otherSide(end);
	if (!partner || !profile.channels.some(({id}) => id === partner)) return undefined;
	const seat = reading.from === end ? reading.to : reading.from;
	// Only where the seat is made for both sides: at any other one of them is nearer.
	if (seat !== referenceSeat(profile).id) return undefined;
	const others = (profile.tape ?? []).filter(
		other => !other.setAside && isSameStretch(other, {...reading, from: partner, to: seat}),
	);
	if (others.length === 0) return undefined;
	const mean = others.reduce((sum, {metres}) => sum + metres, 0) / others.length;
	const difference = reading.metres - mean;
	const isUneven = Math.abs(difference) > Math.max(askedAsymmetry.metres, askedAsymmetry.share * mean);
	const swapped = swappedDigits(reading.metres, tapeShownIn(profile.kit)).find(
		({metres}) => Math.abs(difference) >= swapMetres && Math.abs(metres - mean) < swapToleranceMetres,
	);
	if (!isUneven && !swapped) return undefined;
	return finding('doubt', 'tape-left-right', [end], {
		metres: reading.metres,
		partner,
		partnerMetres: mean,
		...(swapped ? {swappedMetres: swapped.metres} : slipOf(reading.metres, mean)),
	});
}
