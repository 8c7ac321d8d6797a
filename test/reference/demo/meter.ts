import type {ChannelId, MeterReading, SettingsSet} from '../../../source/profile/types.ts';
import type {BlendStep} from '../../../source/study/calibration/blend/steps.ts';
import {
	bandSumDb,
	bandWeightingDb,
	highPass,
	lowPass,
	mainsBandHertz,
	type Part,
	subBandHertz,
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
/** The crossover that stands for a front; the subs' low-pass follows it. */
function crossoverOf({settings}: Round, id: ChannelId): number {
	const hertz = settings.channels[id]?.crossoverHertz;
	if (typeof hertz !== 'number') throw new Error(`${id} has no crossover.`);
	return hertz;
}
const mainsWeightingDb = bandWeightingDb(...mainsBandHertz);
const subsWeightingDb = bandWeightingDb(...subBandHertz);
/** Standard deviation of the meter from one reading to the next, dB. */
const meterSigmaDb = 0.3;

/** A round with the meter: what it is drawn from, the settings in force, and the random numbers. */
export type Round = {
	readonly truth: Truth;
	readonly settings: SettingsSet;
	readonly random: Random;
	readonly round: 'first' | 'proof';
};

const pink = ([fromHertz, toHertz]: readonly [number, number]) =>
	({kind: 'pink', fromHertz, toHertz}) as const;
const mains = pink(mainsBandHertz);
const subs = pink(subBandHertz);

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
	const {fedBy = 'LFE1', output: outputId = ''} = truth.subs[sub]!;
	const output = settings.outputs?.[outputId];
	const inverted = Boolean(settings.channels[fedBy]?.polarityInverted) !== Boolean(output?.polarityInverted);
	return {
		levelDb:
			trueSubDb(truth, sub, seat) +
			(settings.channels[fedBy]?.trimDb?.stepped ?? 0) +
			(output?.gainDb?.stepped ?? 0),
		timeMs:
			trueArrivalMs(truth, sub, seat) + receiverDelayMs(settings, fedBy) + (output?.delayMs?.stepped ?? 0),
		phase: inverted ? Math.PI : 0,
	};
}

/** A front through its high-pass and its closed box. */
function frontTonePart(round: Round, id: ChannelId, hertz: number, seat: string): Part {
	const {truth, settings} = round;
	const electric = highPass(hertz, crossoverOf(round, id));
	const box = highPass(hertz, truth.speakers[id]!.lowLimitHertz);
	return {
		levelDb:
			trueMainDb(truth, id, seat) +
			(settings.channels[id]?.trimDb?.stepped ?? 0) +
			electric.decibels +
			box.decibels,
		timeMs: trueArrivalMs(truth, id, seat) + receiverDelayMs(settings, id),
		phase: electric.phase + box.phase,
	};
}

/** The subs through the low-pass of a front's crossover, their vented boxes and their upper limit. */
function subToneParts(
	round: Round,
	front: ChannelId,
	hertz: number,
	seat: string,
	addedDelayMs = 0,
	isTurned = false,
): Part[] {
	const electric = lowPass(hertz, crossoverOf(round, front));
	const box = subBox(hertz);
	return Object.keys(round.truth.subs).map(sub => {
		const part = subPart(round, sub, seat);
		return {
			levelDb: part.levelDb + electric.decibels + box.decibels,
			timeMs: part.timeMs + addedDelayMs,
			phase: (part.phase ?? 0) + electric.phase + box.phase + (isTurned ? Math.PI : 0),
		};
	});
}

const bandSteps = 96;

/** One reading of fronts with all subs behind them, as the blend asks for it. */
export function blendReading(
	round: Round,
	step: Pick<BlendStep, 'source' | 'seat' | 'signal' | 'added' | 'playInto'>,
): MeterReading {
	const {source, seat, signal, added, playInto} = step;
	const fronts = playInto as readonly ChannelId[];
	const levelAt = (front: ChannelId, hertz: number) =>
		toneSumDb(hertz, [
			frontTonePart(round, front, hertz, seat),
			...subToneParts(round, front, hertz, seat, added.delayMs, added.isTurned),
		]) + toneWeightingDb(hertz);
	const noiseDb = (from: number, to: number) => {
		const powers = fronts.flatMap(front =>
			Array.from(
				{length: bandSteps},
				(_, index) =>
					10 ** (levelAt(front, from * (to / from) ** ((index + 0.5) / bandSteps)) / 10) / bandSteps,
			),
		);
		return 10 * Math.log10(powers.reduce((sum, power) => sum + power, 0));
	};
	const levelDb =
		signal.kind === 'tone' ? levelAt(fronts[0]!, signal.hertz) : noiseDb(signal.fromHertz, signal.toHertz);
	return {
		...reading(
			round,
			[source].flat(),
			seat,
			levelDb,
			signal,
			added.delayMs === 0 ? undefined : added.delayMs,
		),
		...(added.isTurned && {invertedSources: Object.keys(round.truth.subs)}),
		...(signal.kind === 'pink' && round.round === 'first' && {blendPart: 'verification'}),
	};
}

/** All subs together in their band, as read once their delays stand. */
export function subsTogether(round: Round, seat: string, repeats: number): MeterReading[] {
	const subIds = Object.keys(round.truth.subs);
	if (subIds.length < 2) return [];
	const level = bandSumDb(subIds.map(sub => subPart(round, sub, seat))) + subsWeightingDb;
	return Array.from({length: repeats}, () => reading(round, subIds, seat, level, subs));
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
