import {referenceSeat} from '../../../profile/ask/seats.ts';
import {standingSettings} from '../../../profile/ask/settings.ts';
import {channelNames, isLfe} from '../../../profile/channels.ts';
import {usualMainsBand, usualMeterSigmaDb, usualSubBand} from '../../../profile/practice.ts';
import {energyMean} from '../../../science/acoustics/decibels.ts';
import {weightingMemory} from '../../calibration/levels/levels.ts';
import {heardFigures} from './heardFigures.ts';
import type {ChannelFigures, HistoryEntry} from './historyEntry.ts';

type WeightingOf = ReturnType<typeof weightingMemory>;
type Json = {readonly [key: string]: unknown};

const isObject = (value: unknown): value is Json =>
	typeof value === 'object' && value !== null && !Array.isArray(value);
const objects = (value: unknown): Json[] => (Array.isArray(value) ? value.filter(isObject) : []);
const textOf = (value: unknown) => (typeof value === 'string' ? value : undefined);
const numberOf = (value: unknown) =>
	typeof value === 'number' && Number.isFinite(value) ? value : undefined;
const at = (value: unknown, ...path: readonly string[]): unknown =>
	path.reduce((inner, key) => (isObject(inner) && Object.hasOwn(inner, key) ? inner[key] : undefined), value);

/** Level as read without weighting: dB; undefined for tones and readings that make no sense. */
function unweighted(reading: Json, isSub: boolean, weightingOf: WeightingOf): number | undefined {
	const decibels = numberOf(reading.decibels);
	const weighting = reading.weighting;
	if (decibels === undefined || (weighting !== 'A' && weighting !== 'C' && weighting !== 'Z'))
		return undefined;
	if (at(reading, 'signal', 'kind') === 'tone') return undefined;
	const fromHertz = numberOf(at(reading, 'signal', 'fromHertz'));
	const toHertz = numberOf(at(reading, 'signal', 'toHertz'));
	const isStated = fromHertz !== undefined && toHertz !== undefined && fromHertz > 0 && toHertz > 0;
	const band = isStated
		? ({kind: 'pink', fromHertz, toHertz} as const)
		: isSub
			? usualSubBand
			: usualMainsBand;
	return decibels - weightingOf(weighting, band);
}

type Source = {
	readonly id: string;
	readonly name: string;
	readonly channel: string;
	readonly output?: string;
	readonly speaker: string;
};

/** Channels with a speaker of their own and subs, in the profile's order. */
function entrySources(profile: Json): Source[] {
	const mains = objects(profile.channels).flatMap(({id, speaker}): Source[] => {
		const known = textOf(id);
		if (known === undefined || isLfe(known)) return [];
		const name = (channelNames as Partial<Record<string, string>>)[known] ?? known;
		return [{id: known, name, channel: known, speaker: JSON.stringify(speaker ?? null)}];
	});
	const outputs = at(profile, 'bassProcessor', 'outputs');
	const isKnown = (output: string | undefined) => Array.isArray(outputs) && outputs.includes(output);
	const subs = objects(profile.subs).flatMap((sub): Source[] => {
		const id = textOf(sub.id);
		if (id === undefined) return [];
		const output = textOf(sub.processorOutput);
		const {lowLimitHertz, maximumLevelDb, box} = sub;
		return [
			{
				id,
				name: textOf(sub.name) ?? id,
				channel: textOf(sub.fedBy) ?? 'LFE1',
				...(output !== undefined && isKnown(output) && {output}),
				speaker: JSON.stringify([lowLimitHertz, maximumLevelDb, box]),
			},
		];
	});
	return [...mains, ...subs];
}

/** Trim and gain of a source in a set, dB; undefined where the set does not name its channel. */
function statedGain(set: unknown, {channel, output}: Source): number | undefined {
	const trim = numberOf(at(set, 'channels', channel, 'trimDb', 'stepped'));
	if (trim === undefined || output === undefined) return trim;
	return trim + (numberOf(at(set, 'outputs', output, 'gainDb', 'stepped')) ?? 0);
}

type Observed = {readonly lengths: number[]; readonly readings: Json[]};

/** Tape lengths and first-round readings of each source at the reference seat, gathered in one pass over the lists. */
function observed(profile: Json, seat: string): Map<string, Observed> {
	const found = new Map<string, Observed>();
	const of = (id: string) => {
		const known = found.get(id) ?? {lengths: [], readings: []};
		found.set(id, known);
		return known;
	};

	for (const {from, to, metres, setAside} of objects(profile.tape)) {
		const end = to === seat ? from : from === seat ? to : undefined;
		const length = numberOf(metres);
		if (typeof end === 'string' && length !== undefined && setAside !== true) of(end).lengths.push(length);
	}

	for (const reading of objects(profile.meter)) {
		const {source, round, setAside} = reading;
		if (typeof source !== 'string' || reading.seat !== seat || round !== 'first' || setAside === true)
			continue;
		of(source).readings.push(reading);
	}

	return found;
}

function figuresOf(
	source: Source,
	{lengths, readings}: Observed,
	meterSigmaDb: number,
	sets: ReadonlyMap<string, Json>,
	decided: unknown,
	weightingOf: WeightingOf,
): ChannelFigures {
	const isSub = source.id !== source.channel;
	const levels: number[] = [];
	const owns: number[] = [];
	for (const reading of readings) {
		const level = unweighted(reading, isSub, weightingOf);
		if (level === undefined) continue;
		levels.push(level);
		const set = typeof reading.inForce === 'string' ? sets.get(reading.inForce) : reading.inForce;
		const gain = statedGain(set, source);
		if (gain !== undefined) owns.push(level - gain - (numberOf(at(set, 'masterVolumeDb')) ?? 0));
	}

	const trimDb = statedGain(decided, source);
	return {
		name: source.name,
		isSub,
		speaker: source.speaker,
		...(lengths.length > 0 && {
			distanceMetres: lengths.reduce((sum, length) => sum + length, 0) / lengths.length,
		}),
		...(levels.length > 0 && {
			levelDb: energyMean(levels),
			sigmaDb: meterSigmaDb / Math.sqrt(levels.length),
		}),
		...(owns.length > 0 && owns.length === levels.length && {ownDb: energyMean(owns)}),
		...(trimDb !== undefined && {trimDb}),
	};
}

/**
The figures of one profile that its room's history needs, straight from parsed JSON.

A thousand profiles are read for one table, so what is not looked at is not checked; what has another type than
expected counts as missing.

@param value - Any JSON value.
@param id - Name of the file.
@param weightingOf - One for all profiles of a table: they were metered with the same few signals.
@returns `undefined` where it is no profile: no name, date or room.
*/
export function readEntry(
	value: unknown,
	id: string,
	weightingOf: WeightingOf = weightingMemory(),
): HistoryEntry | undefined {
	if (!isObject(value)) return undefined;
	const [name, date, room] = [textOf(value.name), textOf(value.date), textOf(at(value, 'room', 'name'))];
	if (
		name === undefined ||
		room === undefined ||
		date === undefined ||
		!/^\d{4}-\d{2}-\d{2}$/.test(date) ||
		Number.isNaN(Date.parse(date))
	)
		return undefined;
	const seats = objects(value.seats);
	const seat = textOf(referenceSeat({seats})?.id) ?? '';
	const settings = objects(value.settings);
	const sets = new Map(settings.flatMap(set => (typeof set.id === 'string' ? [[set.id, set] as const] : [])));
	const decided = standingSettings({settings});
	const readings = observed(value, seat);
	const responses = objects(value.responses);
	const sigma = numberOf(at(value, 'kit', 'meterSigmaDb')) ?? usualMeterSigmaDb;
	const channels = new Map(
		entrySources(value).map(source => {
			const own = readings.get(source.id) ?? {lengths: [], readings: []};
			const figures = figuresOf(source, own, sigma, sets, decided, weightingOf);
			return [source.id, {...figures, ...heardFigures(responses, source.id, seat)}] as const;
		}),
	);
	return {id, name, date, room, channels};
}
