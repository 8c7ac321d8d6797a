import {responseFrequencies} from '../../hearing/responses.ts';
import {worstOfBass} from '../diff/bassChange.ts';
import type {ChannelFigures} from './historyEntry.ts';

type Json = {readonly [key: string]: unknown};

const numbers = (value: unknown): value is number[] =>
	Array.isArray(value) && value.every(each => typeof each === 'number' && Number.isFinite(each));

/**
Deepest dip and decay of the newest response of a channel, straight from parsed JSON.

@param responses - Of the profile, in the order in which they were taken.
*/
export function heardFigures(
	responses: readonly Json[],
	source: string,
	seat: string,
): Pick<ChannelFigures, 'dip' | 'decaySeconds'> {
	const own = responses.findLast(
		each =>
			each.source === source &&
			each.seat === seat &&
			(each.part ?? 'all') === 'all' &&
			each.setAside !== true &&
			levelsOf(each) !== undefined,
	);
	if (!own) return {};
	const levels = levelsOf(own)!;
	const frequenciesHz = responseFrequencies().slice(0, levels.length);
	const levelsDb = Float64Array.from(levels.slice(0, frequenciesHz.length));
	const dip = worstOfBass({frequenciesHz, levelsDb})?.dip;
	const decaySeconds = octaveSeconds(own.decays);
	return {...(dip && {dip}), ...(decaySeconds !== undefined && {decaySeconds})};
}

function levelsOf({points}: Json): readonly number[] | undefined {
	if (typeof points !== 'object' || points === null) return undefined;
	const {levelsDb} = points as Json;
	return numbers(levelsDb) && levelsDb.length > 0 ? levelsDb : undefined;
}

function octaveSeconds(decays: unknown): number | undefined {
	const octave = Array.isArray(decays)
		? decays.find((each): each is Json => (each as Json | null)?.hertz === 500)
		: undefined;
	const seconds = octave?.t20Seconds ?? octave?.edtSeconds;
	return typeof seconds === 'number' && Number.isFinite(seconds) && seconds > 0 ? seconds : undefined;
}
