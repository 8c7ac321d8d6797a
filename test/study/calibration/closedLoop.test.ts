import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import type {ChannelId, MeterReading, Profile, Receiver, SettingsSet} from '../../../source/profile/types.ts';
import {speedOfSound} from '../../../source/science/acoustics/air.ts';
import {weightingOfSpectrum} from '../../../source/science/acoustics/band.ts';
import {coherentSum} from '../../../source/science/acoustics/decibels.ts';
import {toSettingsSet} from '../../../source/study/calibration/toSettingsSet.ts';
import {solve} from '../../afresh.ts';

/**
A true room: where sound comes from, how loud and how late. Readings are made from it by the laws alone (flight time,
latencies, trims adding to levels), never by the program; the settings found are put back into the same laws.
*/
type Speaker = {readonly metres: number; readonly levelDb: number; readonly latencyMs: number};
type TrueRoom = {
	readonly speakers: Readonly<Partial<Record<ChannelId, Speaker>>>;
	readonly subs: ReadonlyArray<Speaker & {readonly output?: string}>;
	readonly processorLatencyMs: number;
	readonly temperatureCelsius: number;
	readonly receiver: Receiver;
};

const speaker = fc.record({
	metres: fc.integer({min: 800, max: 6000}).map(millimetres => millimetres / 1000),
	levelDb: fc.integer({min: 690, max: 810}).map(tenths => tenths / 10),
	latencyMs: fc.constantFrom(0, 0, 0, 2.7),
});
const timing = fc.constantFrom<Receiver['timing'][]>(
	{kind: 'distance', shownIn: 'm', stepMetres: 0.05, minimumMetres: 0, maximumMetres: 30},
	{
		kind: 'distance',
		shownIn: 'ft',
		stepMetres: 0.03048,
		minimumMetres: 0,
		maximumMetres: 24,
		speedOfSoundMetresPerSecond: 345,
	},
	{kind: 'delay', stepMs: 0.1, minimumMs: 0, maximumMs: 60},
	{kind: 'delay', stepMs: 1, minimumMs: 0, maximumMs: 60},
);
const room: fc.Arbitrary<TrueRoom> = fc.record({
	speakers: fc.record(
		{FL: speaker, FR: speaker, FC: speaker, LS: speaker, TpFL: speaker},
		{requiredKeys: ['FL', 'FR']},
	),
	subs: fc
		.array(speaker, {maxLength: 2})
		.chain(subs =>
			fc
				.boolean()
				.map(isProcessed => subs.map((sub, index) => (isProcessed ? {...sub, output: 'AB'[index]!} : sub))),
		),
	processorLatencyMs: fc.constantFrom(0, 1.5, 6),
	temperatureCelsius: fc.integer({min: 12, max: 28}),
	receiver: fc.record({
		timing,
		trim: fc.constantFrom(
			{stepDb: 0.5, minimumDb: -15, maximumDb: 15},
			{stepDb: 1, minimumDb: -15, maximumDb: 15},
		),
		crossover: fc.constant({choicesHertz: [60, 80, 100], scope: 'per channel' as const}),
		subOutputs: fc.constant(1),
	}),
});

const mains = {kind: 'pink' as const, fromHertz: 355, toHertz: 2818};
const bass = {kind: 'pink' as const, fromHertz: 28.2, toHertz: 112.2};
const speakerIds = (truth: TrueRoom) => Object.keys(truth.speakers) as ChannelId[];
const trimOf = (set: SettingsSet | undefined, id: ChannelId) => set?.channels[id]?.trimDb?.stepped ?? 0;

function subLevelDb(truth: TrueRoom, index: number, set: SettingsSet | undefined): number {
	const {levelDb, output} = truth.subs[index]!;
	const gain = output === undefined ? 0 : (set?.outputs?.[output]?.gainDb?.stepped ?? 0);
	return levelDb + trimOf(set, 'LFE1') + gain;
}

/** The readings of a round with the settings in force; a C-weighted meter without noise. */
function readings(truth: TrueRoom, set: SettingsSet | undefined): MeterReading[] {
	const common = {seat: 'seat', weighting: 'C', round: 'first', inForce: set?.id ?? 'zero'} as const;
	const subs = truth.subs.map((_, index) => subLevelDb(truth, index, set));
	const read = (
		source: MeterReading['source'],
		decibels: number,
		signal: typeof mains | typeof bass,
	): MeterReading => ({
		...common,
		source,
		decibels: decibels + weightingOfSpectrum('C', signal),
		signal,
	});
	return [
		...speakerIds(truth).map(id => read(id, truth.speakers[id]!.levelDb + trimOf(set, id), mains)),
		...subs.map((level, index) => read(`sub${index + 1}`, level, bass)),
		...(subs.length > 1 ? [read(['sub1', 'sub2'], coherentSum(subs), bass)] : []),
	];
}

function profileOf(truth: TrueRoom, set?: SettingsSet): Profile {
	const isProcessed = truth.subs.some(({output}) => output !== undefined);
	// The subs stood in step when they were read together, so that they made their coherent sum.
	const speed = speedOfSound({
		temperatureCelsius: truth.temperatureCelsius,
		humidityPercent: 45,
	}).metresPerSecond;
	const lateMs = truth.subs.map(({metres, latencyMs}) => (1000 * metres) / speed + latencyMs);
	const inStep = truth.subs.flatMap(({output}, index) =>
		output === undefined ? [] : [[output, {delayMs: {stepped: Math.max(...lateMs) - lateMs[index]!}}]],
	);
	const zero: SettingsSet = {id: 'zero', origin: 'found', channels: {}, outputs: Object.fromEntries(inStep)};
	return {
		format: 1,
		name: 'Invented loop',
		date: '2026-01-01',
		room: {name: 'Invented loop'},
		air: {temperatureCelsius: truth.temperatureCelsius, humidityPercent: 45},
		seats: [{id: 'seat', name: 'Seat', reference: true}],
		channels: [
			...speakerIds(truth).map(id => ({
				id,
				latencyMs: truth.speakers[id]!.latencyMs,
				speaker: {lowLimitHertz: 60},
			})),
			...(truth.subs.length > 0 ? [{id: 'LFE1' as const}] : []),
		],
		subs: truth.subs.map(({latencyMs, output}, index) => ({
			id: `sub${index + 1}`,
			name: `Sub ${index + 1}`,
			fedBy: 'LFE1' as const,
			latencyMs,
			...(output !== undefined && {processorOutput: output}),
		})),
		receiver: truth.receiver,
		...(isProcessed && {
			bassProcessor: {
				latencyMs: truth.processorLatencyMs,
				outputs: ['A', 'B'],
				delay: {stepMs: 0.1, minimumMs: 0, maximumMs: 40},
				gain: {stepDb: 0.5, minimumDb: -20, maximumDb: 20},
			},
		}),
		tape: [
			...speakerIds(truth).map(id => ({from: 'seat', to: id as string, metres: truth.speakers[id]!.metres})),
			...truth.subs.map(({metres}, index) => ({from: 'seat', to: `sub${index + 1}`, metres})),
		],
		meter: readings(truth, set),
		settings: set ? [zero, set] : [zero],
	};
}

/** When each sound arrives with the settings in force, ms, but for what all have in common. */
function arrivals(truth: TrueRoom, set: SettingsSet): number[] {
	const speed = speedOfSound({
		temperatureCelsius: truth.temperatureCelsius,
		humidityPercent: 45,
	}).metresPerSecond;
	const {timing: entry} = truth.receiver;
	const added = (id: ChannelId) =>
		entry.kind === 'delay'
			? set.channels[id]!.delayMs!.stepped
			: // A receiver told a larger distance waits less.
				(-1000 * set.channels[id]!.distanceMetres!.stepped) / (entry.speedOfSoundMetresPerSecond ?? 343);
	return [
		...speakerIds(truth).map(id => {
			const {metres, latencyMs} = truth.speakers[id]!;
			return (1000 * metres) / speed + latencyMs + added(id);
		}),
		...truth.subs.map(({metres, latencyMs, output}) => {
			const inProcessor =
				output === undefined ? 0 : truth.processorLatencyMs + (set.outputs?.[output]?.delayMs?.stepped ?? 0);
			return (1000 * metres) / speed + latencyMs + inProcessor + added('LFE1');
		}),
	];
}

const spread = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
const dialled = (truth: TrueRoom, before?: SettingsSet): SettingsSet =>
	toSettingsSet(solve(profileOf(truth, before)), {
		id: before ? 'second' : 'first',
		decidedAt: '2026-01-01T00:00:00Z',
	});
const stepMs = ({receiver: {timing: entry}}: TrueRoom) =>
	entry.kind === 'delay'
		? entry.stepMs
		: (1000 * entry.stepMetres) / (entry.speedOfSoundMetresPerSecond ?? 343);
/** Subs that share the one LFE output without a processor can't be set apart: no law promises them anything. */
const isSeparable = ({subs}: TrueRoom) => subs.length < 2 || subs.every(({output}) => output !== undefined);

describe('the settings, put back into the room', () => {
	test('make everything arrive together within one step', () => {
		fc.assert(
			fc.property(room.filter(isSeparable), truth => {
				// Joint rounding leaves less than one step between any two; a processor's finer step adds at most its own.
				expect(spread(arrivals(truth, dialled(truth)))).toBeLessThanOrEqual(stepMs(truth) + 0.1 + 1e-6);
			}),
			{numRuns: 300, seed: 11},
		);
	});

	test('leave between any two exactly what the solution says that the steps leave', () => {
		fc.assert(
			fc.property(room.filter(isSeparable), truth => {
				const {worstTimingErrorMs} = solve(profileOf(truth));
				expect(spread(arrivals(truth, dialled(truth)))).toBeCloseTo(worstTimingErrorMs ?? 0, 6);
			}),
			{numRuns: 200, seed: 12},
		);
	});

	test('make every speaker, and all subs together, as loud as the target within a step', () => {
		fc.assert(
			fc.property(room.filter(isSeparable), truth => {
				const set = dialled(truth);
				const master = solve(profileOf(truth)).masterVolumeChangeDb ?? 0;
				const step = truth.receiver.trim.stepDb;
				const levels = speakerIds(truth).map(id => truth.speakers[id]!.levelDb + trimOf(set, id));
				const subs = truth.subs.map((_, index) => subLevelDb(truth, index, set));
				const all = subs.length > 0 ? [...levels, coherentSum(subs)] : levels;
				for (const level of all) expect(Math.abs(level + master - 75)).toBeLessThanOrEqual(step);
				expect(spread(all)).toBeLessThanOrEqual(step + (subs.length > 0 ? 0.5 : 0) + 1e-6);
			}),
			{numRuns: 300, seed: 13},
		);
	});

	test('and read again with them in force, they stay within a step', () => {
		fc.assert(
			fc.property(room.filter(isSeparable), truth => {
				const first = dialled(truth);
				const second = dialled(truth, first);
				for (const id of speakerIds(truth)) {
					const moved = trimOf(second, id) - trimOf(first, id);
					expect(Math.abs(moved)).toBeLessThanOrEqual(truth.receiver.trim.stepDb + 1e-9);
				}

				expect(spread(arrivals(truth, second))).toBeLessThanOrEqual(stepMs(truth) + 0.1 + 1e-6);
			}),
			{numRuns: 200, seed: 14},
		);
	});
});

// Delays hang on differences alone. Distances carry the common part along, so that another set of steps may serve as well.
const takesDelays = ({receiver}: TrueRoom) => receiver.timing.kind === 'delay';

test('a latency that all share changes no delay', () => {
	fc.assert(
		fc.property(
			room.filter(truth => isSeparable(truth) && takesDelays(truth)),
			fc.constantFrom(1, 12.3),
			(truth, more) => {
				const later = <T extends Speaker>(each: T): T => ({...each, latencyMs: each.latencyMs + more});
				const speakers = Object.fromEntries(
					Object.entries(truth.speakers).map(([id, each]) => [id, later(each)]),
				);
				const shifted = {...truth, speakers, subs: truth.subs.map(later)};
				const delays = (of: TrueRoom) =>
					Object.values(dialled(of).channels).map(({delayMs}) => delayMs!.stepped);
				const before = delays(truth);
				delays(shifted).forEach((delay, index) => {
					expect(delay).toBeCloseTo(before[index]!, 6);
				});
			},
		),
		{numRuns: 100, seed: 15},
	);
});
