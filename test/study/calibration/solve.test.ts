import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {observe} from '../../../source/profile/ask/readings.ts';
import type {ChannelId, MeterReading, Profile, TapeReading} from '../../../source/profile/types.ts';
import {measuredDistance} from '../../../source/study/calibration/timing/distances.ts';
import {holdingOf} from '../../../source/study/survey/holding.ts';
import {solve} from '../../afresh.ts';
import {emptyRoom, level, tape} from './room.ts';
import {sentence} from './sentence.ts';

const codes = (profile: Profile) => solve(profile).remarks.map(({code}) => code);

describe('edges', () => {
	test('solve of a profile with nothing measured says so, and lists what is missing', () => {
		const solution = solve(emptyRoom());
		expect(solution.remarks).toContainEqual(
			expect.objectContaining({kind: 'problem', code: 'nothing-measured'}),
		);
		expect(solution.channels.map(({id, timing, trimDb}) => [id, timing, trimDb])).toEqual([
			['FL', undefined, undefined],
			['FR', undefined, undefined],
		]);
		expect(solution.channels[0]!.remarks.map(({code}) => code).slice(0, 2)).toEqual([
			'distance-missing',
			'level-missing',
		]);
		expect(solution).not.toHaveProperty('masterVolumeChangeDb');
	});

	test('solve takes the first seat where none is the reference', () => {
		const profile = emptyRoom({
			seats: [
				{id: 'middle', name: 'sofa'},
				{id: 'side', name: 'side'},
			],
		});
		expect(solve(profile).seat).toBe('middle');
	});

	test('solve leaves another seat’s distances alone', () => {
		const seats = [
			{id: 'middle', name: 'sofa middle', reference: true},
			{id: 'side', name: 'sofa side'},
		];
		const profile = emptyRoom({seats, tape: [tape('FL', 3), {from: 'FR', to: 'side', metres: 2}]});
		expect(solve(profile).channels.map(({distance}) => distance?.metres)).toEqual([3, undefined]);
	});

	test('solve takes a tape reading whichever end comes first', () => {
		const profile = emptyRoom({tape: [{from: 'middle', to: 'FL', metres: 3}]});
		expect(solve(profile).channels[0]!.distance!.metres).toBe(3);
	});

	test('solve names the formula of the speed of sound, and its doubt', () => {
		const {speedOfSound} = solve(emptyRoom({air: undefined, tape: [tape('FL', 3)]}));
		expect(speedOfSound.formula).toBe('ISO 9613-1 at an assumed 20 °C');
		expect(speedOfSound.sigma).toBeGreaterThan(1.5);
		expect(codes(emptyRoom({air: undefined, tape: [tape('FL', 3)]}))).toContain('temperature-assumed');
	});

	test('solve keeps the polarity that was decided', () => {
		const profile = emptyRoom({
			settings: [
				{id: 'old', origin: 'found', channels: {FL: {polarityInverted: false}}},
				{id: 'new', origin: 'solved', channels: {FL: {polarityInverted: true}}},
			],
		});
		expect(solve(profile).channels[0]!.polarityInverted).toBe(true);
	});

	test('a sub whose processor output is not described counts as direct, and is said so', () => {
		const profile = emptyRoom({
			channels: [{id: 'FL'}, {id: 'LFE1'}],
			subs: [{id: 'sub', name: 'Sub', fedBy: 'LFE1', processorOutput: 'three'}],
			tape: [tape('FL', 2), tape('sub', 3)],
		});
		expect(codes(profile)).toContain('output-unknown');
		expect(solve(profile).outputs).toEqual([]);
		expect(solve(profile).channels[1]!.timing!.stepped).toBe(0);
	});
});

describe('distances', () => {
	test('repeats are averaged, and their uncertainty shrinks by what repeats can average', () => {
		const once = solve(emptyRoom({tape: [tape('FL', 3)]})).channels[0]!.distance!;
		const often = solve(emptyRoom({tape: [tape('FL', 2.999), tape('FL', 3.001)]})).channels[0]!.distance!;
		// Held 12 mm well at the ear and 7 mm at the speaker: √(2² + 12² + 7² + 3² + 1/12) = 14.36 mm once;
		// √((2² + 12² + 7²)/2 + 3² + 1/12) = 10.37 mm of two.
		expect(once).toMatchObject({metres: 3, from: 'reading', readings: 1});
		expect(once.sigmaMetres).toBeCloseTo(0.014_36, 5);
		expect(often).toMatchObject({from: 'repeats', readings: 2});
		expect(often.sigmaMetres).toBeCloseTo(0.010_37, 5);
	});

	test('a repeat that differs is named with its number', () => {
		const {remarks} = solve(emptyRoom({tape: [tape('FL', 2.75), tape('FL', 2.87)]})).channels[0]!;
		expect(sentence(remarks.find(({code}) => code === 'tape-spread'))).toBe(
			'Front left: 2.87 m, 0.12 m longer than its repeat. Measure it once more, from the same point at the speaker to the ear.',
		);
	});

	test('a surer distance from all tape readings is used, and said; a suspected one is not', () => {
		const profile = emptyRoom({tape: [tape('FL', 3)]});
		const read = {observations: observe(profile), holding: holdingOf(profile)};
		const net = {metres: 3.004, sigmaMetres: 0.001};
		const measured = (adjusted: typeof net & {isSuspected?: boolean}) =>
			measuredDistance(read, 'middle', 'FL', new Map([['middle\nFL', adjusted]]))!;
		const used = measured(net);
		expect(used.distance).toMatchObject({metres: 3.004, from: 'network'});
		expect(used.remarks.map(({code}) => code)).toContain('distance-from-network');
		expect(measured({...net, isSuspected: true}).distance).toMatchObject({metres: 3, from: 'reading'});
		expect(measured({...net, sigmaMetres: 0.05}).distance.from).toBe('reading');
	});

	test('the uncertainty of a delay holds that of tape and of the speed of sound', () => {
		const profile = emptyRoom({tape: [tape('FL', 3.432), tape('FR', 1.716)]});
		const [fl] = solve(profile).channels;
		// Tape √(2² + 3.432² + 1/12 + 12² + 7²) = 14.454 mm is 0.04212 ms; 1 °C is 0.1706 % of 2.5 ms from the mean, 0.00426 ms.
		expect(fl!.timing!.sigma).toBeCloseTo(Math.hypot(0.042_12, 0.00426), 4);
	});
});

describe('whatever comes', () => {
	const ids = ['FL', 'FC', 'LS', 'TpSiL', 'LFE1'] as const satisfies readonly ChannelId[];
	const ends = ['FL', 'FC', 'LS', 'TpSiL', 'sub1', 'sub2', 'LFE1', 'wall:left', 'middle', 'nobody'];
	const reading: fc.Arbitrary<TapeReading> = fc.record({
		from: fc.constantFrom(...ends),
		to: fc.constantFrom('middle', 'side', 'floor'),
		metres: fc.double({min: 0, max: 1000, noNaN: true}),
	});
	const heard: fc.Arbitrary<MeterReading> = fc.record({
		source: fc.oneof(
			fc.constantFrom(...ends, 'background'),
			fc.array(fc.constantFrom('sub1', 'sub2', 'FL', 'LFE1'), {minLength: 1, maxLength: 3}),
		),
		seat: fc.constantFrom('middle', 'side'),
		decibels: fc.double({min: -300, max: 300, noNaN: true}),
		weighting: fc.constantFrom('A', 'C', 'Z'),
		round: fc.constant('first'),
	});
	// The same lists for every run, so that the crossovers are ranked once.
	const channels = ids.map(id => ({id}));
	const behindProcessor = ['sub1', 'sub2'].map(id => ({
		id,
		name: id,
		fedBy: 'LFE1' as const,
		processorOutput: id,
	}));
	const directly = behindProcessor.map(({processorOutput: _, ...sub}) => sub);
	const base = emptyRoom().receiver!;
	const steps = fc.double({min: 0.001, max: 20, noNaN: true});
	const profile: fc.Arbitrary<Profile> = fc
		.record({
			tape: fc.array(reading),
			meter: fc.array(heard),
			step: steps,
			range: steps,
			seats: fc.constantFrom('reference', 'weighted'),
			direct: fc.boolean(),
			distance: fc.boolean(),
		})
		.map(({tape: lengths, meter, step, range, seats, direct, distance}) =>
			emptyRoom({
				seats: [
					{id: 'middle', name: 'sofa middle', reference: true},
					{id: 'side', name: 'sofa side', weight: 2},
				],
				channels,
				subs: direct ? directly : behindProcessor,
				receiver: {
					...base,
					timing: distance
						? {kind: 'distance', shownIn: 'm', stepMetres: step / 10, minimumMetres: 0, maximumMetres: range}
						: {kind: 'delay', stepMs: step, minimumMs: 0, maximumMs: range},
					trim: {stepDb: step, minimumDb: -range, maximumDb: range},
				},
				bassProcessor: {
					latencyMs: 3,
					outputs: ['sub1', 'sub2'],
					delay: {stepMs: step / 3, minimumMs: 0, maximumMs: range},
					gain: {stepDb: step / 2, minimumDb: -range, maximumDb: 0},
				},
				target: {seats},
				tape: lengths,
				meter,
			}),
		);

	test('solve never throws, and every number is finite', () => {
		fc.assert(
			fc.property(profile, value => {
				const solution = solve(value);
				const bad: string[] = [];
				const visit = (entry: unknown, path: string) => {
					if (typeof entry === 'number' && !Number.isFinite(entry)) bad.push(path);
					if (typeof entry === 'string' && /NaN|Infinity|undefined/.test(entry))
						bad.push(`${path}: ${entry}`);
					if (typeof entry !== 'object' || entry === null) return;
					for (const [key, inner] of Object.entries(entry)) visit(inner, `${path}.${key}`);
				};
				visit(solution, 'solution');
				expect(bad).toEqual([]);
			}),
			{seed: 20260418, numRuns: 500},
		);
	});

	test('solve keeps every entry on its steps and inside its limits', () => {
		fc.assert(
			fc.property(profile, value => {
				const {channels, outputs} = solve(value);
				const {timing, trim} = value.receiver!;
				const {delay, gain} = value.bassProcessor!;
				const isOn = (entry: number, step: number, minimum: number, maximum: number) => {
					expect(Math.abs((entry - minimum) / step - Math.round((entry - minimum) / step))).toBeLessThan(
						1e-5,
					);
					expect(entry).toBeGreaterThanOrEqual(minimum - 1e-6);
					expect(entry).toBeLessThanOrEqual(maximum + 1e-6);
				};
				for (const channel of channels) {
					if (channel.timing && timing.kind === 'delay')
						isOn(channel.timing.stepped, timing.stepMs, timing.minimumMs, timing.maximumMs);
					if (channel.timing && timing.kind === 'distance')
						isOn(channel.timing.stepped, timing.stepMetres, timing.minimumMetres, timing.maximumMetres);
					if (channel.trimDb) isOn(channel.trimDb.stepped, trim.stepDb, trim.minimumDb, trim.maximumDb);
				}

				for (const {delayMs, gainDb} of outputs) {
					if (delayMs) isOn(delayMs.stepped, delay.stepMs, delay.minimumMs, delay.maximumMs);
					if (gainDb) isOn(gainDb.stepped, gain.stepDb, gain.minimumDb, gain.maximumDb);
				}
			}),
			{seed: 4, numRuns: 500},
		);
	});

	test('solve gives the same whatever the order of readings of one kind', () => {
		fc.assert(
			fc.property(profile, value => {
				const turned = {...value, tape: value.tape!.toReversed()};
				const entries = (one: Profile) => solve(one).channels.map(({timing}) => timing?.stepped);
				expect(entries(turned)).toEqual(entries(value));
			}),
			{seed: 5, numRuns: 100},
		);
	});
});

test('solve takes a hundred thousand repeats', () => {
	const many = Array.from({length: 100_000}, (_, index) =>
		level(index % 2 ? 'FL' : 'FR', 75 + (index % 7) / 10),
	);
	const lengths = Array.from({length: 100_000}, (_, index) => tape(index % 2 ? 'FL' : 'FR', 3));
	const {channels} = solve(emptyRoom({meter: many, tape: lengths}));
	expect(channels.map(({level: found}) => found!.repeats)).toEqual([50_000, 50_000]);
	expect(channels.map(({distance}) => distance!.readings)).toEqual([50_000, 50_000]);
});
