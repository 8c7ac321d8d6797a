import type {MeterReading, Profile, Signal} from '../../../profile/types.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {levelPrompt} from './levelPrompt.ts';

export {weightingOf} from './levelPrompt.ts';

export type MeterQuestion = {
	readonly id: string;
	/** A channel, a sub, several at once, or `background`. */
	readonly source: string | readonly string[];
	readonly seat: string;
	/** Point around the seat, from 2; absent at the ear. */
	readonly point?: number;
	readonly signal?: Signal;
	readonly question: string;
	readonly about?: string;
	readonly explain: string;
	readonly drawing?: readonly string[];
	readonly caution?: string;
	readonly briefCaution?: string;
	readonly isRequired?: boolean;
	readonly row?: string;
};

/** A question for a level of the first round, taken with noise. */
export function meterPrompt(profile: Profile, asked: MeterQuestion): Prompt<Profile> {
	const {source, seat, signal, point, ...words} = asked;
	const key = keyOf(source);
	return levelPrompt(profile, {
		...words,
		stop: 'meter',
		isOwn: reading =>
			reading.round === 'first' &&
			reading.seat === seat &&
			(reading.point ?? 1) === (point ?? 1) &&
			reading.signal?.kind !== 'tone' &&
			reading.addedDelayMs === undefined &&
			keyOf(reading.source) === key,
		made: subject => ({
			source: typeof source === 'string' ? source : [...source],
			seat,
			...(point !== undefined && {point}),
			...(signal ? {signal} : {}),
			round: 'first',
			...inForceNow(subject, source),
		}),
	});
}

/** The set that stood before the round, if it was told; background noise has none. */
function inForceNow(profile: Profile, source: string | readonly string[]): Pick<MeterReading, 'inForce'> {
	const found = foundSet(profile);
	return found && source !== 'background' ? {inForce: found.id} : {};
}

/** The latest set that was told to stand while the first round is metered. */
export function foundSet(profile: Profile) {
	return profile.settings?.findLast(({id}) => /^found\d*$/.test(id));
}

/** One name for what sounds, whatever the order it was listed in. */
export function keyOf(source: string | readonly string[]): string {
	return typeof source === 'string' ? source : source.toSorted().join('+');
}
