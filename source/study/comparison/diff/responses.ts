import {isLfe} from '../../../profile/channels.ts';
import {nameOf} from '../../../profile/names.ts';
import type {Profile} from '../../../profile/types.ts';
import {median} from '../../../science/numeric/statistics.ts';
import {type BassChange, bassChange} from './bassChange.ts';
import {linesRecorded, type RecordedLine} from './linesRecorded.ts';
import type {Change, ResponseChange} from './profileDiff.ts';
import {changeScale} from './weights.ts';

type Pair = {readonly then: RecordedLine; readonly now: RecordedLine};
type Rename = (id: string) => string;

/** Fewer lines than this do not tell the recorder's gain from a line that changed. */
const leastLines = 3;
/** A microphone put back by hand stands some centimetres off: what differs by less is scatter. Common practice, no source. */
const scatter = {levelDb: 1, extremeDb: 3, decayShare: 0.1} as const;

/** What changed in the responses that both profiles hold, and how many only one does. */
export function responseChanges(older: Profile, newer: Profile, rename: Rename): Change[] {
	const before = linesRecorded(older, rename);
	const after = linesRecorded(newer, id => id);
	const pairs = [...after].flatMap(([key, now]) => {
		const then = before.get(key);
		return then && then.sha256 !== now.sha256 ? [{then, now}] : [];
	});
	const changes = pairs.map(pair => changeOf(pair, pairs, newer));
	return [...changes, ...missing('older', before, after), ...missing('newer', after, before)];
}

/** Lines at one seat whose curves hold the recorder's own colour in one of the profiles. */
export function colouredLines(older: Profile, newer: Profile, rename: Rename): string[] {
	const before = linesRecorded(older, rename);
	const coloured = [...linesRecorded(newer, id => id)].filter(([key, now]) => {
		const then = before.get(key);
		return then !== undefined && !(then.isMicrophoneKnown && now.isMicrophoneKnown);
	});
	return [...new Set(coloured.map(([, {source}]) => source))];
}

function changeOf(pair: Pair, all: readonly Pair[], newer: Profile): ResponseChange {
	const {then, now} = pair;
	const isKnown = then.isMicrophoneKnown && now.isMicrophoneKnown;
	const bass = bassChange(then.curve, now.curve, isKnown);
	const shared = sharedChange(all.filter(other => other.now.seat === now.seat));
	// An LFE channel has bass alone, which a recorder may cut.
	const isTold = isKnown || !isLfe(now.source);
	const levelDb = isTold ? lessShared(differenceOf(pair, 'levelDb'), shared) : undefined;
	const bassLevelDb = isKnown ? lessShared(differenceOf(pair, 'bassLevelDb'), shared) : undefined;
	const decaySeconds =
		then.decaySeconds === undefined || now.decaySeconds === undefined
			? undefined
			: {before: then.decaySeconds, after: now.decaySeconds};
	const sizes = sizesOf({levelDb, bassLevelDb, bass, decaySeconds});
	return {
		kind: 'response',
		about: now.source,
		name: nameOf(newer, now.source),
		seat: now.seat,
		seatName: nameOf(newer, now.seat),
		...(levelDb !== undefined && {levelDb}),
		...(bassLevelDb !== undefined && {bassLevelDb}),
		...bass,
		...(decaySeconds && {decaySeconds}),
		isScatter: sizes.every(size => size <= 1),
		weight: (Math.max(0, ...sizes) * scatter.levelDb) / changeScale.dB,
	};
}

const differenceOf = ({then, now}: Pair, band: 'levelDb' | 'bassLevelDb') =>
	then[band] === undefined || now[band] === undefined ? undefined : now[band] - then[band];

/** What recorder and master volume add to every line: the middle change of the mains. */
function sharedChange(pairs: readonly Pair[]): number | undefined {
	const changes = pairs
		.filter(({now}) => !isLfe(now.source))
		.flatMap(pair => differenceOf(pair, 'levelDb') ?? []);
	return changes.length >= leastLines ? median(changes) : undefined;
}

const lessShared = (change: number | undefined, shared: number | undefined) =>
	change === undefined || shared === undefined ? undefined : change - shared;

/** How large each change is, in units of what two recordings of one thing may differ by. */
function sizesOf(of: {
	readonly levelDb: number | undefined;
	readonly bassLevelDb: number | undefined;
	readonly bass: BassChange;
	readonly decaySeconds: ResponseChange['decaySeconds'];
}): number[] {
	const {dip, peak, mostChanged} = of.bass;
	const extremes = [dip, peak].flatMap(pair =>
		pair ? [(pair.after?.aboveDb ?? 0) - (pair.before?.aboveDb ?? 0)] : [],
	);
	const {decaySeconds: decay} = of;
	return [
		...[of.levelDb, of.bassLevelDb]
			.flatMap(level => level ?? [])
			.map(level => Math.abs(level) / scatter.levelDb),
		...[...extremes, ...(mostChanged ? [mostChanged.changeDb] : [])].map(
			change => Math.abs(change) / scatter.extremeDb,
		),
		...(decay ? [Math.abs(Math.log(decay.after / decay.before)) / scatter.decayShare] : []),
	];
}

function missing(
	side: 'older' | 'newer',
	one: ReadonlyMap<string, RecordedLine>,
	other: ReadonlyMap<string, RecordedLine>,
): Change[] {
	const count = [...one.keys()].filter(key => !other.has(key)).length;
	return count > 0
		? [{kind: 'only in one', about: 'recording', side, readings: 'recording', count, weight: 0}]
		: [];
}
