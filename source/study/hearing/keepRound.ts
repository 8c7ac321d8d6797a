import type {PlayingState, RecordedResponse, Recording} from '../../profile/types.ts';
import type {HeardLine} from './heardPlaying.ts';
import type {PlayingRow, SeatRound} from './playingRow.ts';
import {type HeardResponse, responseFrequencies} from './responses.ts';
import type {SubGroup} from './visit.ts';

/** A response as it is kept, but for the digest of its content. */
export type KeptResponse = Omit<RecordedResponse, 'sha256'>;

/** Where a playing was recorded, and with what. */
export type RecordedIn = {
	readonly file: string;
	readonly sha256: string;
	readonly round: 'first' | 'proof';
	readonly inForce?: string;
	readonly microphone?: string;
	readonly takenAt?: string;
};

const rounded = (value: number, step: number) => Math.round(value / step) / Math.round(1 / step);
const finiteDb = (value: number | undefined) =>
	value === undefined || !Number.isFinite(value) ? undefined : rounded(value, 0.01);

/** Points of a complex response: levels to 0.01 dB, phases to 0.1°, up to where the sweep reached. */
export function keptPoints({real, imaginary}: HeardResponse, upToHertz: number): RecordedResponse['points'] {
	const frequencies = responseFrequencies();
	const count = frequencies.findLastIndex(hertz => hertz <= upToHertz) + 1;
	const levelsDb: number[] = [];
	const phasesDegrees: number[] = [];
	for (let index = 0; index < Math.max(1, count); index += 1) {
		levelsDb.push(
			rounded(10 * Math.log10(Math.max(real[index]! ** 2 + imaginary[index]! ** 2, 1e-20)), 0.01),
		);
		phasesDegrees.push(rounded((180 / Math.PI) * Math.atan2(imaginary[index]!, real[index]!), 0.1));
	}

	return {levelsDb, phasesDegrees};
}

/** The complex response that points stand for, zero beyond their end. */
export function responseOfPoints(points: NonNullable<RecordedResponse['points']>): HeardResponse {
	const count = responseFrequencies().length;
	const real = new Float64Array(count);
	const imaginary = new Float64Array(count);
	for (let index = 0; index < Math.min(count, points.levelsDb.length); index += 1) {
		const size = 10 ** (points.levelsDb[index]! / 20);
		const angle = ((points.phasesDegrees[index] ?? 0) * Math.PI) / 180;
		real[index] = size * Math.cos(angle);
		imaginary[index] = size * Math.sin(angle);
	}

	return {real, imaginary};
}

function lineResponse(
	line: HeardLine,
	seat: string,
	recording: string,
	round: 'first' | 'proof',
): KeptResponse {
	const {onset, delayMs, polarity, clarity} = line;
	return defined({
		source: line.channel,
		seat,
		part: 'all',
		recording,
		round,
		arrivalMs: delayMs === undefined ? undefined : rounded(delayMs, 0.0001),
		arrivalSigmaMs: line.sigmaMs === undefined ? undefined : rounded(line.sigmaMs, 0.0001),
		laterMs:
			onset?.later && delayMs !== undefined
				? rounded(delayMs + onset.later.ms - onset.ms, 0.0001)
				: undefined,
		polarity: polarity === undefined ? undefined : polarity.sign > 0 ? 'plus' : 'minus',
		levelDb: finiteDb(line.levelDb),
		bassLevelDb: finiteDb(line.bassLevelDb),
		noiseBelowDb: finiteDb(line.noiseBelowDb),
		c50Db: finiteDb(clarity?.c50Db),
		decays:
			line.decays.length > 0
				? line.decays.map(decay => ({...decay, rangeDb: rounded(decay.rangeDb, 0.1)}))
				: undefined,
		points: keptPoints(line.response, line.upToHertz),
	} as const) as KeptResponse;
}

/**
Recordings and responses of seats as they are kept in a profile, digests left out.

@param isWanted - Whether a seat's line is taken.
*/
export function keptRound(
	rows: readonly PlayingRow[],
	rounds: readonly SeatRound[],
	recordedIn: (row: PlayingRow) => RecordedIn,
	idOf: (row: PlayingRow) => string,
	isWanted: (seat: string, channel: string) => boolean = () => true,
): {readonly recordings: Recording[]; readonly responses: KeptResponse[]} {
	const recordings = rows
		.filter(({isUsed, seat}) => isUsed && seat !== undefined)
		.map(
			(row): Recording =>
				defined({
					id: idOf(row),
					...recordedIn(row),
					atSeconds: rounded(row.playing.atSeconds, 0.001),
					seat: row.seat!,
					state: changedState(row, rounds),
					apartBy: rounds.find(({base}) => base === row)?.apartBy,
					clockPpm: rounded(row.playing.clockPpm, 0.01),
				}) as Recording,
		);
	const responses = rounds.flatMap(({seat, base, apart, groups}) => {
		const id = idOf(base);
		const {round} = recordedIn(base);
		const own = base.playing.lines
			.filter(({channel}) => isWanted(seat, channel))
			.map(line => lineResponse(line, seat, id, round));
		if (!apart) return own;
		const common = {seat, recording: id, round};
		const upToHertz = 300;
		const mains = [...apart.mains]
			.filter(([source]) => isWanted(seat, source))
			.map(
				([source, response]): KeptResponse => ({
					source,
					part: 'main',
					...common,
					points: keptPoints(response, upToHertz),
				}),
			);
		const subs = [...apart.groups].flatMap(([group, found]) =>
			found.map(({mean, scatterDb, crossoverHertz}): KeptResponse => {
				const ids = groups.find(each => each.id === group)!.subs;
				return {
					source: ids.length === 1 ? ids[0]! : [...ids],
					part: 'subs',
					...common,
					...(crossoverHertz !== undefined && {crossoverHertz}),
					...(Number.isFinite(scatterDb) && {scatterDb: rounded(10 ** (scatterDb / 20) * 8.686, 0.001)}),
					points: keptPoints(mean, upToHertz),
				};
			}),
		);
		return [...own, ...mains, ...subs];
	});
	return {recordings, responses};
}

function changedState({changed}: PlayingRow, rounds: readonly SeatRound[]): PlayingState | undefined {
	if (changed.length === 0) return undefined;
	const groups = rounds.flatMap(each => each.groups).filter((group: SubGroup) => changed.includes(group.id));
	const subsOfKind = (change: SubGroup['change']) => [
		...new Set(groups.filter(group => group.change === change).flatMap(({subs}) => subs)),
	];
	const [turned, muted, delayed] = (['turned', 'muted', 'delayed'] as const).map(subsOfKind);
	const moved = groups.find(({change}) => change === 'delayed')?.moved;
	return {
		...(turned!.length > 0 && {turned}),
		...(muted!.length > 0 && {muted}),
		...(delayed!.length > 0 && moved && {delayed, addedDelayMs: rounded(moved.addedMs, 0.001)}),
	};
}

function defined<Value extends object>(value: Value): Partial<Value> {
	return Object.fromEntries(
		Object.entries(value).filter(([, entry]) => entry !== undefined),
	) as Partial<Value>;
}
