import {type BoxState, channelState, delayOf, withChannel} from '../../../profile/ask/boxState.ts';
import {type Line, lineOf} from '../../../profile/ask/lines.ts';
import {finding} from '../../../profile/finding.ts';
import type {Profile} from '../../../profile/types.ts';
import {withLaterLine, withTurnedLine} from './asPlayed.ts';
import type {SlipCandidate} from './candidate.ts';
import type {SetControl} from './facts.ts';

const shareOf = {polarity: 0.02, 'sub delay forgotten': 0.02, 'sub delay': 0.01, crossover: 0.01};

/** Delays tried for an entry that is off by an unknown amount: within half a period of 33 Hz. */
const searchMs = 15;
const searchStepMs = 1;

/** Mistakes in the delay and polarity of one line of a sub, or of the lines of all of them together. */
function lineCandidates(
	intended: BoxState,
	former: BoxState,
	lines: readonly Line[],
	control: SetControl,
	hasTones: boolean,
): SlipCandidate[] {
	const about = lines.map(({channel, output}) => output ?? channel);
	const formerMs = lines.map(line => delayOf(former, line) - delayOf(intended, line));
	const delayed = (state: BoxState, byMs: (index: number) => number) =>
		lines.reduce((changed, line, index) => withLaterLine(changed, line, byMs(index)), state);
	const found: SlipCandidate[] = [
		{
			mistake: finding('doubt', 'slip-polarity', about, {control}),
			change: state => lines.reduce(withTurnedLine, state),
			logPrior: Math.log(shareOf.polarity),
		},
	];
	if (formerMs.some(off => Math.abs(off) >= 0.1)) {
		found.push({
			mistake: finding('doubt', 'slip-sub-delay-forgotten', about, {control, offMs: formerMs[0]!}),
			change: state => delayed(state, index => formerMs[index]!),
			logPrior: Math.log(shareOf['sub delay forgotten']),
		});
	}

	if (!hasTones) return found;
	const steps = Math.round(searchMs / searchStepMs);
	for (let step = -steps; step <= steps; step++) {
		if (step === 0) continue;
		const addedMs = step * searchStepMs;
		found.push({
			mistake: finding('doubt', 'slip-sub-delay', about, {control, offMs: addedMs}),
			change: state => delayed(state, () => addedMs),
			// One of so many amounts: their shares add up to that of the mistake.
			logPrior: Math.log(shareOf['sub delay'] / (2 * steps)),
		});
	}

	return found;
}

function crossoverCandidates(profile: Profile, intended: BoxState, channel: string): SlipCandidate[] {
	const {crossoverHertz} = channelState(intended, channel);
	if (crossoverHertz === undefined) return [];
	const {choicesHertz = [], fullRange = false} = profile.receiver?.crossover ?? {};
	const others = [...choicesHertz, ...(fullRange ? (['full'] as const) : [])].filter(
		choice => choice !== crossoverHertz,
	);
	return others.map(choice => ({
		mistake: finding('doubt', 'slip-crossover', [channel], {stands: choice, should: crossoverHertz}),
		change: state => withChannel(state, channel, {crossoverHertz: choice}),
		logPrior: Math.log(shareOf.crossover / others.length),
	}));
}

/**
Mistakes that show only where several sources sound together, or at a tone near the crossover.

@param among - Subs of readings taken together, mains of readings at a tone; empty where there are none.
*/
export function blendCandidates(
	profile: Profile,
	intended: BoxState,
	former: BoxState,
	among: {readonly subs: readonly string[]; readonly mains: readonly string[]; readonly hasTones: boolean},
): SlipCandidate[] {
	const lines = new Map(
		among.subs.map(sub => {
			const line = lineOf(profile, sub);
			return [line.output ?? line.channel, line];
		}),
	);
	const controlOf = ({channel, output}: Line): SetControl =>
		output === undefined ? {box: 'receiver', id: channel} : {box: 'processor', id: output};
	// Subs that share a channel of the receiver are all moved by one entry there.
	const all = [...lines.values()];
	const together =
		all.length > 1
			? lineCandidates(intended, former, all, {box: 'all subs', id: all[0]!.channel}, among.hasTones)
			: [];
	return [
		...all.flatMap(line => lineCandidates(intended, former, [line], controlOf(line), among.hasTones)),
		...together,
		...among.mains.flatMap(channel => crossoverCandidates(profile, intended, channel)),
	];
}
