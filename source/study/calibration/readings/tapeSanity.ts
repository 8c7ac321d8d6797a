import {ceilingHeights} from '../../../profile/ask/ceiling.ts';
import {otherSide} from '../../../profile/ask/otherSide.ts';
import {referenceSeat} from '../../../profile/ask/seats.ts';
import {nameOf} from '../../../profile/names.ts';
import {isPlane} from '../../../profile/planes.ts';
import {askedAsymmetry, leastEarMetres, longestHomeMetres} from '../../../profile/practice.ts';
import type {Profile, TapeReading} from '../../../profile/types.ts';
import {holdingOf} from '../../survey/holding.ts';
import {tapeSigmaMetres} from '../../survey/sigma.ts';
import {swappedDigits} from '../../survey/swappedDigits.ts';
import type {Remark} from '../result.ts';
import {inLength, remark} from '../words.ts';

const metresPerFoot = 0.3048;
/**
What strikes at once about a tape reading that was just typed, before it is computed with.

@param reading - May already be in the profile (as the same object) or not.
@returns Most serious first; empty where nothing strikes.
*/
export function remarkOnTape(profile: Profile, reading: TapeReading): Remark[] {
	const end = speakerEnd(profile, reading);
	const beyond = beyondRoom(profile, reading, end);
	if (beyond) return [beyond];
	const name = nameOf(profile, end);
	const unit = profile.lengthUnit;
	if (isBetweenPoints(reading) && reading.metres < leastEarMetres) {
		const text = `${name}: ${inLength(reading.metres, unit)} is closer than a head fits. Check the unit, then measure again.`;
		return [remark('problem', 'tape-too-short', text, end)];
	}

	const fromRepeats = farFromRepeats(profile, reading, end);
	if (fromRepeats) return [fromRepeats];
	const uneven = asymmetry(profile, reading, end);
	return uneven ? [uneven] : [];
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

function beyondRoom(profile: Profile, {metres}: TapeReading, end: string): Remark | undefined {
	const diagonal = roomDiagonal(profile);
	const limit = diagonal ? diagonal.metres * 1.02 + 0.05 : longestHomeMetres;
	if (metres <= limit) return undefined;
	const unit = profile.lengthUnit;
	const isFeetSlip = metres * metresPerFoot > leastEarMetres && metres * metresPerFoot <= limit;
	const isCentimetreSlip = metres / 100 > leastEarMetres && metres / 100 <= limit;
	const meant = isFeetSlip
		? ` Was it read in feet? Then it is ${inLength(metres * metresPerFoot, unit)}.`
		: isCentimetreSlip
			? ` Was it read in centimetres? Then it is ${inLength(metres / 100, unit)}.`
			: ' Measure it again.';
	const why = diagonal
		? `in a room ${inLength(diagonal.length, unit)} long; no straight line in it exceeds ${inLength(diagonal.metres, unit)}`
		: `away, longer than a home room`;
	const text = `${nameOf(profile, end)}: ${inLength(metres, unit)} ${why}.${meant}`;
	return remark('problem', 'tape-beyond-room', text, end);
}

function farFromRepeats(profile: Profile, reading: TapeReading, end: string): Remark | undefined {
	const repeats = (profile.tape ?? []).filter(
		other => other !== reading && !other.setAside && isSameStretch(other, reading),
	);
	if (repeats.length === 0) return undefined;
	const others = repeats.map(({metres}) => metres);
	const middle = others.toSorted((a, b) => a - b)[Math.floor(others.length / 2)]!;
	const difference = reading.metres - middle;
	const limit = Math.max(
		0.02,
		3 * Math.SQRT2 * tapeSigmaMetres({...reading, metres: middle}, holdingOf(profile)),
	);
	if (Math.abs(difference) <= limit) return undefined;
	const unit = profile.lengthUnit;
	const text = `${nameOf(profile, end)}: ${inLength(reading.metres, unit)}, ${inLength(Math.abs(difference), unit)} ${difference > 0 ? 'longer' : 'shorter'} than ${others.length > 1 ? 'its repeats' : 'its repeat'} of ${inLength(middle, unit)}.${slip(reading.metres, middle)} Measure it once more.`;
	return remark('doubt', 'tape-far-from-repeats', text, end);
}

/** The likely cause where the numbers tell. */
function slip(metres: number, expected: number): string {
	const difference = Math.abs(metres - expected);
	const tolerance = 0.012;
	if (Math.abs(difference - metresPerFoot) < tolerance) return ' That is just one foot.';
	if (Math.abs(difference - 1) < tolerance) return ' That is just one metre.';
	if (Math.abs(difference - 0.1) < tolerance / 2) return ' That is just ten centimetres.';
	if (Math.abs(metres / expected - 1 / metresPerFoot) < 0.05)
		return ' Feet taken for metres would explain it.';
	if (Math.abs(metres / expected - metresPerFoot) < 0.005) return ' Metres taken for feet would explain it.';
	return '';
}

function isSameStretch(a: TapeReading, b: TapeReading): boolean {
	return (a.from === b.from && a.to === b.to) || (a.from === b.to && a.to === b.from);
}

/** A difference of sides below this is no slip of the pen; with its digits swapped a length meets the other side this closely. */
const swapMetres = 0.1;
const swapToleranceMetres = 0.02;

function asymmetry(profile: Profile, reading: TapeReading, end: string): Remark | undefined {
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
	const unit = profile.lengthUnit;
	const isUneven = Math.abs(difference) > Math.max(askedAsymmetry.metres, askedAsymmetry.share * mean);
	const swapped = swappedDigits(reading.metres, unit ?? 'm').find(
		({metres}) => Math.abs(difference) >= swapMetres && Math.abs(metres - mean) < swapToleranceMetres,
	);
	if (!isUneven && !swapped) return undefined;
	const cause = swapped
		? ` Two swapped digits would make it ${inLength(swapped.metres, unit)}.`
		: slip(reading.metres, mean);
	const text = `${nameOf(profile, end)}: ${inLength(reading.metres, unit)}, but ${nameOf(profile, partner)} is at ${inLength(mean, unit)}.${cause} If they really stand that differently, keep it; else measure again.`;
	return remark('doubt', 'tape-left-right', text, end);
}
