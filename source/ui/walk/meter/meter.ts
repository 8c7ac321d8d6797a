import {referenceSeat} from '../../../profile/ask/seats.ts';
import {nameOf} from '../../../profile/names.ts';
import type {Profile, Signal} from '../../../profile/types.ts';
import {walkingOrder} from '../order.ts';
import type {Prompt} from '../prompt/prompt.ts';
import type {Stop} from '../stop.ts';
import {briefNoise, foundPrompts, noiseCaution} from './found.ts';
import {meterPrompt, weightingOf} from './meterPrompt.ts';

const mainsNoise: Signal = {kind: 'pink', fromHertz: 500, toHertz: 2000};
const bassNoise: Signal = {kind: 'pink', fromHertz: 30, toHertz: 80};

const held: readonly string[] = [
	'      ┬   meter on a stand or at arm’s length,',
	'      │   tip at ear height, pointing up,',
	'     [ ]  head out of the way, slow',
];

/**
Meter questions: what stands in the receiver, then each speaker and each sub at the reference seat; subs together
where there are several; then, where wanted, the quiet room and the other seats.
*/
export function meterPrompts(profile: Profile): Prompt<Profile>[] {
	const reference = referenceSeat(profile);
	const subs = (profile.subs ?? []).map(({id}) => id);
	const sources = [...walkingOrder(profile), ...subs];
	const weighting = weightingOf(profile);
	const at = (source: string, seat: string, isRequired: boolean) => {
		const isSub = subs.includes(source);
		return meterPrompt(profile, {
			id: `meter:${source}:${seat}`,
			source,
			seat,
			signal: isSub ? bassNoise : mainsNoise,
			question: `${nameOf(profile, source)} at ${nameOf(profile, seat)}`,
			about: `Noise on ${nameOf(profile, source)} alone. Meter at ear height, ${weighting}, slow.`,
			explain: isSub
				? 'Let the needle settle for ten seconds and take its middle. Bass noise swings more than the rest.'
				: 'Wait until the figure settles and take its middle. Typed again, it is a repeat and both count.',
			drawing: held,
			caution: noiseCaution,
			briefCaution: briefNoise,
			isRequired,
			row: source,
		});
	};

	return [
		...foundPrompts(profile),
		...sources.map(source => at(source, reference.id, true)),
		...(subs.length > 1
			? [
					meterPrompt(profile, {
						id: `meter:subs:${reference.id}`,
						source: subs,
						seat: reference.id,
						signal: bassNoise,
						question: `All subs together at ${reference.name}`,
						about: `Noise on all subs at once. Meter at ear height, ${weighting}, slow.`,
						explain:
							'Two subs add up by 0 to 6 dB, after their distances. Without this reading a sum in step is assumed.',
						drawing: held,
						row: 'LFE1',
					}),
				]
			: []),
		meterPrompt(profile, {
			id: `meter:background:${reference.id}`,
			source: 'background',
			seat: reference.id,
			question: `The quiet room at ${reference.name}`,
			about: `Noise off, fans as in the round. Meter at ear height, ${weighting}, slow.`,
			explain:
				'What the room itself gives is taken off the readings. More than 15 dB below them it does not matter.',
			drawing: held,
		}),
		...profile.seats
			.filter(seat => seat !== reference)
			.flatMap(seat => sources.map(source => at(source, seat.id, false))),
	];
}

/** Levels of the first round. */
export const meterStop = {
	id: 'meter',
	name: 'Meter',
	prompts: meterPrompts,
	after: 'dialIn',
} as const satisfies Stop<never>;
