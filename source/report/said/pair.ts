import {listed, nameOf} from '../../profile/names.ts';
import {leastPairGainDb, mostPairLossDb} from '../../profile/practice.ts';
import type {Profile} from '../../profile/types.ts';
import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import type {BlendResult} from '../../study/calibration/blend/blendResult.ts';
import type {PairResult, PairWanted} from '../../study/calibration/blend/pair/pairResult.ts';

export const pairWayName = 'Two subs against each other';

/** What it is for, and what it takes: readings, changes at a box, minutes. */
export function pairOffer({cost: {readings, changes, minutes}}: PairResult): string {
	return `${pairWayName}, an extra for the bass of the LFE channel: ${readings} readings, ${changes} changes at a box, about ${minutes} min.`;
}

/** What it did in simulated rooms, with tones after it. */
export function pairOdds({odds: {known, hidden, rooms}}: PairResult): string {
	const told = ({wonPercent, lostPercent}: (typeof known)['lfe']) =>
		`louder in ${wonPercent} %, softer in ${lostPercent} %`;
	return `${pairWayName}: in ${rooms} simulated rooms the bass of the LFE channel came out ${told(known.lfe)}, and with tones after it the mean of the fronts ${told(known.fronts)}; where a latency or a turned lead was hidden ${told(hidden.lfe)}, and ${told(hidden.fronts)} (0.3 dB and more). The centre alone came out softer in ${Math.max(known.centre.lostPercent, hidden.centre.lostPercent)} % at most.`;
}

/** What it costs that was read before; empty where nothing was. */
export function pairOutdates({outdates}: PairResult): string {
	if (outdates === 0) return '';
	const readings = outdates === 1 ? '1 reading' : `${outdates} readings`;
	return `A change between the subs outdates ${readings} through the crossover: do it before them.`;
}

/** Where it is, in one sentence. */
export function pairStatus(profile: Profile, {status, wanted, trial, blocks}: PairResult): string {
	const gains = gainsText(profile, trial);
	switch (status) {
		case 'reading':
			return blocks.some(({steps}) => steps.some(({isTaken}) => isTaken))
				? 'The subs against each other: the readings so far allow several answers, so none is given.'
				: 'The subs against each other: nothing is read yet, so there is no answer.';
		case 'stands':
			return 'The subs against each other: nothing promises to be worth a try, they stay as they stand.';
		case 'to try':
			return `To try, not yet verified: ${wantedText(profile, wanted)}${expected(wanted)}.`;
		case 'kept':
			return `Kept between the subs: ${wantedText(profile, wanted)}${gains}${wanted?.isDecided ? '. Decided since, and stands' : '. Dial it in before the fronts are read'}.`;
		case 'put back':
			return `Tried between the subs and put back${gains}: they go back to what stood before.`;
	}
}

function wantedText(profile: Profile, wanted: PairWanted | undefined): string {
	if (!wanted) return 'one sub against the other';
	const {subs, addedMs, isTurned} = wanted;
	return `${listed(subs.map(id => nameOf(profile, id)))} ${pairChangeText(addedMs, isTurned)}`;
}

function pairChangeText(addedMs: number, isTurned: boolean): string {
	const parts = [
		...(Math.abs(addedMs) < 0.005
			? []
			: [`${formatNumber(Math.abs(addedMs), 1)} ms ${addedMs > 0 ? 'later' : 'earlier'}`]),
		...(isTurned ? ['turned'] : []),
	];
	return parts.join(' and ');
}

function expected(wanted: PairWanted | undefined): string {
	if (!wanted?.gainDb) return '';
	const {value, sigma} = wanted.gainDb;
	return `; at these tones, at this seat, ${formatSigned(value, 1)} dB expected (± ${formatNumber(sigma, 1)})`;
}

function gainsText(profile: Profile, trial: PairResult['trial']): string {
	const {lfe, fronts, centre} = trial?.gainsDb ?? {};
	const part = (gain: number | undefined, name: string) =>
		gain === undefined ? [] : [`${formatSigned(gain, 1)} dB ${name}`];
	const parts = [
		...part(lfe, 'through the LFE channel'),
		...part(fronts, 'with all fronts'),
		...part(
			centre,
			`with ${profile.channels.some(({id}) => id === 'FC') ? nameOf(profile, 'FC') : 'one front'} alone`,
		),
	];
	return parts.length > 0 ? ` (${parts.join(', ')})` : '';
}

/** How what is advised between the subs came about. */
export function pairReasons({tones}: PairResult): string[] {
	return [
		`${tones.length} tones of both subs were read through the LFE channel at three delays of one: that tells each at every other delay and polarity. The loudest mean is the one to try.`,
		`Kept where noise through the LFE channel is louder by ${formatNumber(leastPairGainDb, 1)} dB and neither the fronts nor the centre are softer by more than ${formatNumber(mostPairLossDb, 1)} dB; else it goes back.`,
	];
}

/** Levels that no two sounds make. */
export function pairReadingSentences({tones}: PairResult): string[] {
	return tones.flatMap(({hertz, impossibleIndex}) =>
		impossibleIndex === undefined
			? []
			: [
					`Both subs, ${formatNumber(hertz, 0)} Hz: no two sounds make these levels at these delays. Likeliest wrong is meter reading ${impossibleIndex + 1}: another sound in the room, the volume moved, or a delay not typed in. Read this tone again.`,
				],
	);
}

/** What the meter's ways leave alone where there are several subs. */
export function amongSubsSentence({
	subs,
	isToldApartByRecording,
	pair,
	blocks,
}: BlendResult): string | undefined {
	if (subs.length < 2) return undefined;
	const recorded = isToldApartByRecording
		? ' A recording sets them one by one, for what plays through the front speakers.'
		: '';
	// Once the fronts are read the extra comes too late.
	const isOffered = pair && !blocks.some(({steps}) => steps.some(({isTaken}) => isTaken));
	const stays =
		pair?.status === 'kept'
			? 'is what was kept between them'
			: `stays as distances give it${isOffered ? ', unless the extra changes it first' : ''}`;
	return `With the meter all subs move together: how they add up with each other, in the deep bass too, ${stays}.${recorded}`;
}
