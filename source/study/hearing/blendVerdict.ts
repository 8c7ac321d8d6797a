import {effectOf, lineOf, orElse} from '../../profile/ask/lines.ts';
import {settingsInForce} from '../../profile/ask/settings.ts';
import type {Profile, RecordedResponse, Recording} from '../../profile/types.ts';
import {combined} from './apart/complexLine.ts';
import {crossoverUnder} from './crossoverOf.ts';
import {holdsBlend} from './holdsBlend.ts';
import {responseOfPoints} from './keepRound.ts';
import {type HeardResponse, responseFrequencies} from './responses.ts';

/** What one more playing says of a blend that was dialled in. */
export type BlendVerdict = {
	/** Mean over the fronts of what the level through the crossover gained, dB. */
	readonly gainDb: number;
	/** By front. */
	readonly fronts: ReadonlyArray<{readonly channel: string; readonly gainDb: number}>;
	/** Kept where the fronts gain and none is softer by more than what two playings tell apart. */
	readonly isKept: boolean;
	/** The playing that says so. */
	readonly by: Recording;
};

/** A microphone put down anew moves a mean over two octaves by some tenths of a decibel. */
const tellsApartDb = 0.3;
const fromHertz = 40;
const toHertz = 160;

/**
Holds a later playing with the blend dialled in against the one that a blend was found from, at the same seat: the level from 40 to
160 Hz of each front, against its own level in the middle, so that the master's place does not matter. Where trims changed
too, what was recorded then is taken as it would have been with today's: only delay and polarity are judged.

@returns `undefined` where no later playing with it dialled in was recorded there.
*/
export function blendVerdict(profile: Profile, found: Recording): BlendVerdict | undefined {
	const all = profile.recordings ?? [];
	const later = all
		.slice(all.indexOf(found) + 1)
		.findLast(
			each => !each.setAside && !each.state && each.seat === found.seat && holdsBlend(profile, found, each),
		);
	if (!later) return undefined;
	const of = (id: string, channel: string) =>
		profile.responses?.find(
			({recording, part, source, setAside}) =>
				recording === id && (part ?? 'all') === 'all' && source === channel && !setAside,
		);
	const raisedDb = (source: string) => {
		const gain = (recording: Recording) =>
			orElse(
				effectOf(profile, settingsInForce(profile, recording), lineOf(profile, source)).gainDb,
				undefined,
			);
		const [before, after] = [gain(found), gain(later)];
		return before === undefined || after === undefined ? 0 : after - before;
	};
	const fronts = ['FL', 'FR', 'FC'].flatMap(channel => {
		const [before, after] = [of(found.id, channel), of(later.id, channel)];
		if (!before?.points || !after?.points) return [];
		const then =
			withTrims(
				profile,
				found,
				channel,
				crossoverUnder(profile, settingsInForce(profile, found), channel),
				raisedDb,
			) ?? responseOfPoints(before.points);
		const [low, lowAfter] = [
			bassAgainstMiddle(then, before),
			bassAgainstMiddle(responseOfPoints(after.points), after),
		];
		return low === undefined || lowAfter === undefined ? [] : [{channel, gainDb: lowAfter - low}];
	});
	if (fronts.length === 0) return undefined;
	const gainDb = fronts.reduce((sum, front) => sum + front.gainDb, 0) / fronts.length;
	const isKept = gainDb > 0 && fronts.every(front => front.gainDb > -tellsApartDb);
	return {gainDb, fronts, isKept, by: later};
}

/** A front with the subs behind it as it would have been with later trims; against its own speaker, whose level divides out. */
function withTrims(
	{responses = []}: Pick<Profile, 'responses'>,
	{id}: Recording,
	channel: string,
	ownHertz: number | undefined,
	raisedDb: (source: string) => number,
): HeardResponse | undefined {
	const parts = responses.filter(({recording, points, setAside}) => recording === id && points && !setAside);
	const main = parts.find(({part, source}) => part === 'main' && source === channel);
	const subs = parts.filter(
		({part, crossoverHertz}) =>
			part === 'subs' && (crossoverHertz === undefined || crossoverHertz === ownHertz),
	);
	if (!main || subs.length === 0) return undefined;
	return subs.reduce((sum, sub) => {
		const own = [sub.source].flat()[0]!;
		const db = raisedDb(own) - raisedDb(channel);
		return combined(sum, 1, responseOfPoints(sub.points!), 10 ** (db / 20));
	}, responseOfPoints(main.points!));
}

/** Mean level from 40 to 160 Hz above that in the middle, dB. */
function bassAgainstMiddle(
	{real, imaginary}: HeardResponse,
	{levelDb}: Pick<RecordedResponse, 'levelDb'>,
): number | undefined {
	if (levelDb === undefined) return undefined;
	const levels = [...responseFrequencies().entries()].flatMap(([index, hertz]) =>
		hertz >= fromHertz && hertz <= toHertz
			? [10 * Math.log10(Math.max(real[index]! ** 2 + imaginary[index]! ** 2, 1e-20))]
			: [],
	);
	return levels.reduce((sum, level) => sum + level, 0) / levels.length - levelDb;
}
