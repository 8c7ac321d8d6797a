import {effectOf, lineOf, orElse} from '../../profile/ask/lines.ts';
import {settingsInForce} from '../../profile/ask/settings.ts';
import {usualSubBand} from '../../profile/practice.ts';
import type {Profile, RecordedResponse, Recording} from '../../profile/types.ts';
import {median} from '../../science/numeric/statistics.ts';
import {aligned, combined} from './apart/complexLine.ts';
import {crossoverUnder} from './crossoverOf.ts';
import {responseOfPoints} from './keepRound.ts';
import {type HeardResponse, responseFrequencies} from './responses.ts';

/** One front's bass as it was recorded, against what its parts recorded earlier predict for the settings of today. */
export type PredictedBass = {
	readonly channel: string;
	/** Subs that the prediction knows by themselves or together. */
	readonly subs: readonly string[];
	/** Recorded above predicted at a frequency, dB, master volume and recorder's gain taken off; NaN where either is not known. */
	readonly offDbAt: (hertz: number) => number;
	/** The same for the mean power from 28 to 112 Hz, and the largest of any sixth of an octave from 30 to 160 Hz. */
	readonly bandOffDb: number;
	readonly worstDb: number;
};

const looked = [30, 160] as const;

/**
Bass of a recording made with the settings in force, held against speakers and subs as an earlier recording at the same seat told
them apart, moved by what the settings changed. The recorder's colour is in both and cancels, where the recorder is the same.

@returns By front; empty where nothing was told apart before, or settings are not known.
*/
export function predictedBass(profile: Profile, after: Recording): PredictedBass[] {
	const all = profile.recordings ?? [];
	const responses = (profile.responses ?? []).filter(({points, setAside}) => points && !setAside);
	const of = ({id}: Recording, part: NonNullable<RecordedResponse['part']>) =>
		responses.filter(each => each.recording === id && (each.part ?? 'all') === part);
	const before = all
		.slice(0, Math.max(0, all.indexOf(after)))
		.findLast(each => each.seat === after.seat && !each.setAside && of(each, 'subs').length > 0);
	if (!before) return [];
	const [then, now] = [before, after].map(each => settingsInForce(profile, each));
	if (!then || !now || then === now) return [];
	const frequencies = responseFrequencies();
	const changeOf = (source: string) => {
		const [was, is] = [then, now].map(set => effectOf(profile, set, lineOf(profile, source)));
		return {
			laterMs: orElse(is!.delayMs, 0) - orElse(was!.delayMs, 0),
			db: orElse(is!.gainDb, 0) - orElse(was!.gainDb, 0),
			isTurned: is!.isInverted !== was!.isInverted,
		};
	};
	const changed = (own: HeardResponse, source: string): HeardResponse => {
		const {laterMs, db, isTurned} = changeOf(source);
		const moved = aligned(own, frequencies, -laterMs, -db);
		return isTurned ? combined(moved, -1, moved, 0) : moved;
	};
	// Subs that were told together are known together only.
	const areMovedAlike = (sources: readonly string[]) => {
		const [first, ...others] = sources.map(changeOf);
		return others.every(
			each =>
				Math.abs(each.laterMs - first!.laterMs) < 1e-6 &&
				Math.abs(each.db - first!.db) < 1e-6 &&
				each.isTurned === first!.isTurned,
		);
	};
	const recorded = new Map(of(after, 'all').map(each => [each.source as string, each]));
	const found = of(before, 'main').flatMap(main => {
		const channel = main.source as string;
		const own = recorded.get(channel);
		const earlier = of(before, 'all').find(each => each.source === channel);
		const hertz = crossoverUnder(profile, then, channel);
		if (!own?.points || hertz === undefined || hertz !== crossoverUnder(profile, now, channel)) return [];
		const subs = of(before, 'subs').filter(
			({crossoverHertz}) => crossoverHertz === undefined || crossoverHertz === hertz,
		);
		if (!subs.every(({source}) => areMovedAlike([source].flat()))) return [];
		const sum = subs.reduce(
			(total, sub) => combined(total, 1, changed(responseOfPoints(sub.points!), [sub.source].flat()[0]!), 1),
			changed(responseOfPoints(main.points!), channel),
		);
		const trimDb =
			orElse(effectOf(profile, now, lineOf(profile, channel)).gainDb, 0) -
			orElse(effectOf(profile, then, lineOf(profile, channel)).gainDb, 0);
		return [
			{
				channel,
				subs: subs.flatMap(({source}) => [source].flat()),
				sum,
				heard: responseOfPoints(own.points),
				middleDb:
					own.levelDb === undefined || earlier?.levelDb === undefined
						? undefined
						: own.levelDb - earlier.levelDb - trimDb,
			},
		];
	});
	const middles = found.flatMap(({middleDb}) => middleDb ?? []);
	if (middles.length === 0) return [];
	const common = median(middles);
	return found.map(({channel, subs, sum, heard}) => {
		const offOver = (from: number, to: number) =>
			powerDb(heard, frequencies, from, to) - powerDb(sum, frequencies, from, to) - common;
		const sixth = 2 ** (1 / 12);
		const offDbAt = (hertz: number) => offOver(hertz / 2 ** (1 / 48), hertz * 2 ** (1 / 48));
		const worst = [...frequencies]
			.filter(hertz => hertz >= looked[0] && hertz <= looked[1])
			.map(hertz => Math.abs(offOver(hertz / sixth, hertz * sixth)));
		return {
			channel,
			subs,
			offDbAt,
			bandOffDb: offOver(usualSubBand.fromHertz, usualSubBand.toHertz),
			worstDb: Math.max(...worst),
		};
	});
}

/** Mean power within a band, dB; points lie evenly in log f. NaN where nothing is known of it. */
function powerDb(
	{real, imaginary}: HeardResponse,
	frequencies: Float64Array,
	from: number,
	to: number,
): number {
	let [sum, count] = [0, 0];
	for (let index = 0; index < frequencies.length; index += 1) {
		const hertz = frequencies[index]!;
		if (hertz < from || hertz > to) continue;
		sum += real[index]! ** 2 + imaginary[index]! ** 2;
		count += 1;
	}

	return sum > 0 ? 10 * Math.log10(sum / count) : Number.NaN;
}
