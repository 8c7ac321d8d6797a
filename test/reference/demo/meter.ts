import type {ChannelId, MeterReading, SettingsSet} from '../../../source/profile/types.ts';
import {
	bandSumDb,
	bandWeightingDb,
	highPass,
	lowPass,
	type Part,
	subBox,
	toneSumDb,
	toneWeightingDb,
	trueArrivalMs,
	trueMainDb,
	trueSubDb,
} from './levels.ts';
import type {Random} from './random.ts';
import type {Truth} from './truth.ts';

/** The receiver's own constant for turning distances into delays, m/s. */
export const receiverSpeedOfSound = 343;
/** The crossover that stands for the centre; the subs' low-pass follows it. */
function centreCrossover({settings}: Round): number {
	const hertz = settings.channels.FC?.crossoverHertz;
	if (typeof hertz !== 'number') throw new Error('The centre has no crossover.');
	return hertz;
}
const mainsWeightingDb = bandWeightingDb(500, 2000);
const subsWeightingDb = bandWeightingDb(30, 80);
/** Standard deviation of the meter from one reading to the next, dB. */
const meterSigmaDb = 0.3;

/** A round with the meter: what it is drawn from, the settings in force, and the random numbers. */
export type Round = {
	readonly truth: Truth;
	readonly settings: SettingsSet;
	readonly random: Random;
	readonly round: 'first' | 'proof';
};

const mains = {kind: 'pink', fromHertz: 500, toHertz: 2000} as const;
const subs = {kind: 'pink', fromHertz: 30, toHertz: 80} as const;

/** What the meter shows for a level that reaches it, with the background under it, to 0.1 dB. */
function shown(levelDb: number, {truth, random}: Round): number {
	const withBackground = 10 * Math.log10(10 ** (levelDb / 10) + 10 ** (truth.backgroundDb / 10));
	return Math.round((withBackground + meterSigmaDb * random.normal()) * 10) / 10;
}

function reading(
	round: Round,
	source: string | string[],
	seat: string,
	levelDb: number,
	signal: MeterReading['signal'],
	addedDelayMs?: number,
): MeterReading {
	return {
		source,
		seat,
		decibels: shown(levelDb, round),
		weighting: 'C',
		...(signal ? {signal} : {}),
		round: round.round,
		inForce: round.settings.id,
		...(addedDelayMs === undefined ? {} : {addedDelayMs}),
	};
}

function background(round: Round, seat: string): MeterReading {
	return {
		source: 'background',
		seat,
		decibels: Math.round((round.truth.backgroundDb + 0.5 * round.random.normal()) * 10) / 10,
		weighting: 'C',
		round: round.round,
	};
}

/** Delay that the receiver adds to a channel: the farthest entered distance less its own. */
function receiverDelayMs({channels}: SettingsSet, id: ChannelId): number {
	const entered = Object.values(channels).map(setting => setting?.distanceMetres?.stepped ?? 0);
	return (
		((Math.max(...entered) - (channels[id]?.distanceMetres?.stepped ?? 0)) / receiverSpeedOfSound) * 1000
	);
}

/** Level and time of one sub at a seat under the settings, flat in its band. */
export function subPart(
	{truth, settings}: Pick<Round, 'truth' | 'settings'>,
	sub: string,
	seat: string,
): Part {
	const output = settings.outputs?.[truth.subs[sub]!.output ?? ''];
	const inverted = Boolean(settings.channels.LFE1?.polarityInverted) !== Boolean(output?.polarityInverted);
	return {
		levelDb:
			trueSubDb(truth, sub, seat) +
			(settings.channels.LFE1?.trimDb?.stepped ?? 0) +
			(output?.gainDb?.stepped ?? 0),
		timeMs:
			trueArrivalMs(truth, sub, seat) + receiverDelayMs(settings, 'LFE1') + (output?.delayMs?.stepped ?? 0),
		phase: inverted ? Math.PI : 0,
	};
}

/** The centre through its high-pass and its closed box. */
function centreTonePart(round: Round, hertz: number, seat: string): Part {
	const {truth, settings} = round;
	const electric = highPass(hertz, centreCrossover(round));
	const box = highPass(hertz, truth.speakers.FC!.lowLimitHertz);
	return {
		levelDb:
			trueMainDb(truth, 'FC', seat) +
			(settings.channels.FC?.trimDb?.stepped ?? 0) +
			electric.decibels +
			box.decibels,
		timeMs: trueArrivalMs(truth, 'FC', seat) + receiverDelayMs(settings, 'FC'),
		phase: electric.phase + box.phase,
	};
}

/** The subs through their low-pass, their vented boxes and their upper limit. */
function subToneParts(round: Round, hertz: number, seat: string, addedDelayMs = 0): Part[] {
	const electric = lowPass(hertz, centreCrossover(round));
	const box = subBox(hertz);
	return Object.keys(round.truth.subs).map(sub => {
		const part = subPart(round, sub, seat);
		return {
			levelDb: part.levelDb + electric.decibels + box.decibels,
			timeMs: part.timeMs + addedDelayMs,
			phase: (part.phase ?? 0) + electric.phase + box.phase,
		};
	});
}

/** Tones through the crossover at the reference seat: centre alone, subs alone, both, and both with the subs moved. */
export function blendRound(round: Round, seat: string, addedDelaysMs: readonly number[]): MeterReading[] {
	const subIds = Object.keys(round.truth.subs);
	const alone = subIds.length === 1 ? subIds[0]! : subIds;
	return [60, 80, 100].flatMap(hertz => {
		const weighting = toneWeightingDb(hertz);
		const centre = centreTonePart(round, hertz, seat);
		const tone = {kind: 'tone', hertz} as const;
		return [
			reading(round, 'FC', seat, centre.levelDb + weighting, tone),
			reading(round, alone, seat, toneSumDb(hertz, subToneParts(round, hertz, seat)) + weighting, tone),
			...addedDelaysMs.map(added =>
				reading(
					round,
					['FC', ...subIds],
					seat,
					toneSumDb(hertz, [centre, ...subToneParts(round, hertz, seat, added)]) + weighting,
					tone,
					added,
				),
			),
		];
	});
}

/**
Levels of every channel and sub: at the reference seat `repeats` times, at the others once.

@param otherSeats - Whether the round goes beyond the reference seat.
*/
export function levelRound(round: Round, seat: string, repeats: number, otherSeats: boolean): MeterReading[] {
	const {truth, settings} = round;
	const seats = otherSeats ? [seat, ...Object.keys(truth.seats).filter(id => id !== seat)] : [seat];
	const subIds = Object.keys(truth.subs);
	return seats.flatMap(place => {
		const times = Array.from({length: place === seat ? repeats : 1});
		const channels = (Object.keys(truth.speakers) as ChannelId[]).flatMap(id => {
			const level =
				trueMainDb(truth, id, place) + (settings.channels[id]?.trimDb?.stepped ?? 0) + mainsWeightingDb;
			return times.map(() => reading(round, id, place, level, mains));
		});
		const singly = subIds.flatMap(sub =>
			times.map(() => reading(round, sub, place, subPart(round, sub, place).levelDb + subsWeightingDb, subs)),
		);
		const together = bandSumDb(subIds.map(sub => subPart(round, sub, place))) + subsWeightingDb;
		const both = subIds.length > 1 ? times.map(() => reading(round, subIds, place, together, subs)) : [];
		return [background(round, place), ...channels, ...singly, ...both];
	});
}
