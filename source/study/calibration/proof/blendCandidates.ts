import {
	type BoxState,
	channelState,
	delayOf,
	outputState,
	withChannel,
	withOutput,
} from '../../../profile/ask/boxState.ts';
import {type Line, lineOf} from '../../../profile/ask/lines.ts';
import {nameOf} from '../../../profile/names.ts';
import type {Profile} from '../../../profile/types.ts';
import {inMs} from '../words.ts';
import type {Candidate} from './candidates.ts';

const shareOf = {polarity: 0.02, 'sub delay forgotten': 0.02, 'sub delay': 0.01, crossover: 0.01};

/** Delays tried for an entry that is off by an unknown amount: within half a period of 33 Hz. */
const searchMs = 15;
const searchStepMs = 1;

function lineName(profile: Profile, {channel, output}: Line): string {
	return output === undefined ? nameOf(profile, channel) : `output ${output}`;
}

function withDelay(state: BoxState, {channel, output}: Line, addedMs: number): BoxState {
	return output === undefined
		? withChannel(state, channel, {delayMs: channelState(state, channel).delayMs + addedMs})
		: withOutput(state, output, {delayMs: outputState(state, output).delayMs + addedMs});
}

function inverted(state: BoxState, {channel, output}: Line): BoxState {
	return output === undefined
		? withChannel(state, channel, {isInverted: !channelState(state, channel).isInverted})
		: withOutput(state, output, {isInverted: !outputState(state, output).isInverted});
}

function subCandidates(
	profile: Profile,
	intended: BoxState,
	former: BoxState,
	line: Line,
	hasTones: boolean,
): Candidate[] {
	const name = lineName(profile, line);
	const about = [line.output ?? line.channel];
	const delayMs = delayOf(intended, line);
	const formerMs = delayOf(former, line);
	const found: Candidate[] = [
		{
			mistake: {
				kind: 'polarity',
				about,
				text: `${name}: the polarity is the other way round, in the box, at the sub’s switch or in a cable.`,
				check: `Turn the polarity of ${name} and read both together again: the level should come to the one predicted.`,
			},
			change: state => inverted(state, line),
			logPrior: Math.log(shareOf.polarity),
		},
	];
	if (Math.abs(formerMs - delayMs) >= 0.1) {
		found.push({
			mistake: {
				kind: 'sub delay forgotten',
				about,
				text: `${name}: the delay was not changed; it is off by ${inMs(formerMs - delayMs)}.`,
				check: `Look at the delay or distance of ${name}: it should be the new one.`,
			},
			change: state => withDelay(state, line, formerMs - delayMs),
			logPrior: Math.log(shareOf['sub delay forgotten']),
		});
	}

	if (!hasTones) return found;
	const steps = Math.round(searchMs / searchStepMs);
	for (let step = -steps; step <= steps; step++) {
		if (step === 0) continue;
		const addedMs = step * searchStepMs;
		found.push({
			mistake: {
				kind: 'sub delay',
				about,
				text: `${name}: the delay is off by about ${inMs(addedMs)}.`,
				check: `Look at the delay or distance of ${name}, then read the tones again, at three frequencies at least.`,
			},
			change: state => withDelay(state, line, addedMs),
			// One of so many amounts: their shares add up to that of the mistake.
			logPrior: Math.log(shareOf['sub delay'] / (2 * steps)),
		});
	}

	return found;
}

function crossoverCandidates(profile: Profile, intended: BoxState, channel: string): Candidate[] {
	const {crossoverHertz} = channelState(intended, channel);
	if (crossoverHertz === undefined) return [];
	const {choicesHertz = [], fullRange = false} = profile.receiver?.crossover ?? {};
	const others = [...choicesHertz, ...(fullRange ? (['full'] as const) : [])].filter(
		choice => choice !== crossoverHertz,
	);
	const textOf = (choice: number | 'full') => (choice === 'full' ? 'full range' : `${choice} Hz`);
	return others.map(choice => ({
		mistake: {
			kind: 'crossover' as const,
			about: [channel],
			text: `${nameOf(profile, channel)}: the crossover stands at ${textOf(choice)} instead of ${textOf(crossoverHertz)}.`,
			check: `Look at the crossover of ${nameOf(profile, channel)} in the receiver: it should be ${textOf(crossoverHertz)}.`,
		},
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
): Candidate[] {
	const lines = new Map(
		among.subs.map(sub => {
			const line = lineOf(profile, sub);
			return [line.output ?? line.channel, line];
		}),
	);
	return [
		...[...lines.values()].flatMap(line => subCandidates(profile, intended, former, line, among.hasTones)),
		...among.mains.flatMap(channel => crossoverCandidates(profile, intended, channel)),
	];
}
