import type {Profile, RecordedResponse, Recording} from '../../profile/types.ts';
import {responseFrequencies} from './responses.ts';

/** What one more playing says of a blend that was dialled in. */
export type BlendVerdict = {
	/** Mean over the fronts of what the level through the crossover gained, dB. */
	readonly gainDb: number;
	/** By front. */
	readonly fronts: ReadonlyArray<{readonly channel: string; readonly gainDb: number}>;
	/** Kept where the fronts gain and none is softer by more than what two playings tell apart. */
	readonly isKept: boolean;
};

/** A microphone put down anew moves a mean over two octaves by some tenths of a decibel. */
const tellsApartDb = 0.3;
const fromHertz = 40;
const toHertz = 160;

/**
Holds a later playing with other settings against the one that a blend was found from, at the same seat: the level from 40 to
160 Hz of each front, against its own level in the middle, so that the master's place does not matter.

@returns `undefined` where no later playing with other settings was recorded there.
*/
export function blendVerdict(
	profile: Pick<Profile, 'recordings' | 'responses'>,
	found: Recording,
): BlendVerdict | undefined {
	const all = profile.recordings ?? [];
	const later = all
		.slice(all.indexOf(found) + 1)
		.findLast(
			each =>
				!each.setAside &&
				!each.state &&
				each.seat === found.seat &&
				JSON.stringify(each.inForce) !== JSON.stringify(found.inForce),
		);
	if (!later) return undefined;
	const of = (id: string, channel: string) =>
		profile.responses?.find(
			({recording, part, source, setAside}) =>
				recording === id && (part ?? 'all') === 'all' && source === channel && !setAside,
		);
	const fronts = ['FL', 'FR', 'FC'].flatMap(channel => {
		const [before, after] = [of(found.id, channel), of(later.id, channel)];
		const [low, lowAfter] = [before && bassAgainstMiddle(before), after && bassAgainstMiddle(after)];
		return low === undefined || lowAfter === undefined ? [] : [{channel, gainDb: lowAfter - low}];
	});
	if (fronts.length === 0) return undefined;
	const gainDb = fronts.reduce((sum, front) => sum + front.gainDb, 0) / fronts.length;
	return {gainDb, fronts, isKept: gainDb > 0 && fronts.every(front => front.gainDb > -tellsApartDb)};
}

function bassAgainstMiddle({points, levelDb}: RecordedResponse): number | undefined {
	if (!points || levelDb === undefined) return undefined;
	const levels = [...responseFrequencies().entries()].flatMap(([index, hertz]) =>
		hertz >= fromHertz && hertz <= toHertz ? (points.levelsDb[index] ?? []) : [],
	);
	return levels.length === 0
		? undefined
		: levels.reduce((sum, level) => sum + level, 0) / levels.length - levelDb;
}
