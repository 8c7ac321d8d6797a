import {finding} from '../../profile/finding.ts';
import type {RoomFinding} from './facts.ts';
import type {RoomStudy} from './roomStudy.ts';

/** A recorded curve of all subs together at one seat; its level against anything. */
export type RecordedBass = {
	readonly seat: string;
	/** Rising, hertz. */
	readonly frequenciesHertz: ArrayLike<number>;
	readonly levelsDb: ArrayLike<number>;
};

/** Where the bass of an arrangement is judged, hertz. */
const range = {fromHertz: 20, toHertz: 120} as const;
/** Fewer common frequencies than this tell nothing. */
const fewest = 8;

/** Level of a curve between its points, along the logarithm of frequency; undefined outside of it. */
function levelAt({frequenciesHertz: f, levelsDb}: RecordedBass, hertz: number): number | undefined {
	for (let i = 1; i < f.length; i++) {
		if (f[i - 1]! > hertz || f[i]! < hertz) continue;
		const share = Math.log(hertz / f[i - 1]!) / Math.log(f[i]! / f[i - 1]!);
		return levelsDb[i - 1]! + share * (levelsDb[i]! - levelsDb[i - 1]!);
	}

	return undefined;
}

/**
How far the model's bass lies from what was recorded: root of the mean square difference from 20 to 120 Hz once both have
the same mean, dB; one finding a seat that has both.

@param seats - Ids of the study's seats, in its order.
*/
export function besideRecorded(
	{together, frequenciesHertz}: Pick<RoomStudy, 'together' | 'frequenciesHertz'>,
	seats: readonly string[],
	recorded: readonly RecordedBass[],
): RoomFinding[] {
	if (!together) return [];
	return recorded.flatMap((curve): RoomFinding[] => {
		const computed = together.seatsDb[seats.indexOf(curve.seat)];
		if (!computed) return [];
		const common = frequenciesHertz.flatMap((hertz, f) => {
			const level = hertz < range.fromHertz || hertz > range.toHertz ? undefined : levelAt(curve, hertz);
			return level === undefined || !Number.isFinite(level)
				? []
				: [{hertz, differenceDb: computed[f]! - level}];
		});
		if (common.length < fewest) return [];
		const mean = common.reduce((sum, {differenceDb}) => sum + differenceDb, 0) / common.length;
		const square = common.reduce((sum, one) => sum + (one.differenceDb - mean) ** 2, 0) / common.length;
		return [
			finding('note', 'model-beside-recording', [curve.seat], {
				distanceDb: Math.sqrt(square),
				fromHertz: common[0]!.hertz,
				toHertz: common.at(-1)!.hertz,
			}),
		];
	});
}
