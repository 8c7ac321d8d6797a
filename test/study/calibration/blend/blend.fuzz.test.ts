import fc from 'fast-check';
import {expect, test} from 'vitest';
import type {MeterReading, Profile} from '../../../../source/profile/types.ts';
import {blend} from '../../../../source/study/calibration/blend/blend.ts';
import {suggestCrossovers} from '../../../../source/study/calibration/crossover/suggest.ts';
import {planSignals} from '../../../../source/study/playing/plan.ts';
import {blendInputs, headroom, solve} from '../../../afresh.ts';

// Everything that the schema lets through, extremes included, however little sense it makes.
const hertz = fc.double({min: 1e-3, max: 200_000, noNaN: true});
const box = fc.record(
	{
		lowLimitHertz: hertz,
		lowLimitDropDb: fc.constantFrom(3 as const, 6 as const, 10 as const),
		box: fc.constantFrom('closed' as const, 'vented' as const),
		totalQ: fc.double({min: 1e-3, max: 10, noNaN: true}),
	},
	{requiredKeys: []},
);
const reading = fc.record({
	source: fc.constantFrom<MeterReading['source']>(
		'FC',
		'sub1',
		'sub2',
		'LFE1',
		['FC', 'sub1'],
		['sub1', 'sub2'],
		['FC', 'sub1', 'sub2'],
		'background',
		'nobody',
	),
	seat: fc.constant('sofa'),
	decibels: fc.oneof(
		fc.double({min: 60, max: 90, noNaN: true}),
		fc.double({min: -300, max: 300, noNaN: true}),
	),
	weighting: fc.constantFrom('A' as const, 'C' as const, 'Z' as const),
	signal: fc.oneof(
		fc.record({
			kind: fc.constant('tone' as const),
			hertz: fc.oneof(fc.constantFrom(64, 80, 100), hertz),
		}),
		fc.record({kind: fc.constant('pink' as const), fromHertz: fc.constant(40), toHertz: fc.constant(160)}),
	),
	invertedSources: fc.subarray(['sub1', 'sub2', 'FC']),
	blendPart: fc.constantFrom('search' as const, 'verification' as const),
	round: fc.constant('first' as const),
	addedDelayMs: fc.oneof(fc.constantFrom(0, 3), fc.double({min: -10_000, max: 10_000, noNaN: true})),
	inForce: fc.constantFrom('now', 'gone'),
});
const shape = fc.record({
	kind: fc.constantFrom('butterworth' as const, 'linkwitz-riley' as const),
	order: fc.constantFrom(1 as const, 2 as const, 3 as const, 4 as const, 6 as const, 8 as const),
});

const profiles = fc
	.record({
		speaker: box,
		sub: box,
		upperLimitHertz: hertz,
		meter: fc.array(reading, {maxLength: 24}),
		highPass: shape,
		lowPass: shape,
		choicesHertz: fc.array(hertz, {minLength: 1, maxLength: 6}),
		scope: fc.constantFrom('per channel' as const, 'common' as const),
		meterSigmaDb: fc.constantFrom(1e-9, 0.3, 10),
		stepMs: fc.constantFrom(1e-3, 0.1, 100),
	})
	.map(
		({speaker, sub, upperLimitHertz, meter, highPass, lowPass, choicesHertz, scope, meterSigmaDb, stepMs}) =>
			({
				format: 1,
				name: 'Invented room',
				date: '2026-04-18',
				room: {name: 'Invented room'},
				seats: [{id: 'sofa', name: 'Sofa', reference: true}],
				channels: [{id: 'FC', speaker}, {id: 'LFE1'}],
				subs: [
					{id: 'sub1', name: 'One', fedBy: 'LFE1', ...sub, upperLimitHertz},
					{id: 'sub2', name: 'Two', fedBy: 'LFE1'},
				],
				receiver: {
					timing: {kind: 'delay', stepMs, minimumMs: 0, maximumMs: 30},
					trim: {stepDb: 0.5, minimumDb: -12, maximumDb: 12},
					crossover: {choicesHertz, scope, highPass, lowPass},
					subOutputs: 1,
				},
				kit: {meterSigmaDb},
				meter,
				settings: [
					{
						id: 'now',
						origin: 'entered',
						channels: {FC: {delayMs: {stepped: 3}}, LFE1: {delayMs: {stepped: 1}}},
					},
				],
			}) satisfies Profile as Profile,
	);

test('blend, suggestCrossovers, headroom and planSignals never fail on what the schema lets through', () => {
	fc.assert(
		fc.property(profiles, profile => {
			expect(suggestCrossovers(profile).channels.size).toBe(1);
			expect(headroom(profile).sources.length).toBe(2);
			for (const way of ['tones', 'search'] as const) {
				const {tones, wanted, blocks} = blend(blendInputs(profile), way);
				for (const {standsDb, wantedDb} of tones)
					for (const level of [standsDb, wantedDb]) expect(Number.isFinite(level?.value ?? 0)).toBe(true);
				expect(Number.isFinite(wanted?.laterMs ?? 0)).toBe(true);
				const ids = blocks.flatMap(({steps}) => steps.map(({id}) => id));
				expect(new Set(ids).size).toBe(ids.length);
			}

			solve(profile);
			planSignals(profile, -30);
		}),
		{numRuns: 300, seed: 20_260_418},
	);
});

const pairReading = fc
	.record({
		reading,
		hertz: fc.constantFrom(32, 63),
		addedDelayMs: fc.constantFrom(0, 5.6, 11.2, -400),
		isTone: fc.boolean(),
		source: fc.constantFrom<MeterReading['source']>(['sub1', 'sub2'], 'LFE1', ['FC', 'sub1', 'sub2']),
		delayed: fc.option(fc.subarray(['sub1', 'sub2', 'nobody'], {minLength: 1}), {nil: undefined}),
	})
	.map(({reading: {blendPart: _, ...one}, hertz: tone, addedDelayMs, isTone, source, delayed}) => ({
		...one,
		addedDelayMs,
		source,
		...(delayed && {addedDelaySources: delayed}),
		signal: isTone
			? {kind: 'tone' as const, hertz: tone}
			: {kind: 'pink' as const, fromHertz: 28.2, toHertz: 112.2},
	}));

const pairs = fc
	.record({
		profile: profiles,
		meter: fc.array(pairReading, {maxLength: 40}),
		stepMs: fc.constantFrom(0.0001, 0.1, 100),
		maximumMs: fc.constantFrom(0, 3, 1000),
	})
	.map(
		({profile, meter, stepMs, maximumMs}): Profile => ({
			...profile,
			meter,
			tape: ['FC', 'sub1', 'sub2'].map((from, index) => ({from, to: 'sofa', metres: 2 + index})),
			subs: profile.subs!.map((sub, index) => ({...sub, processorOutput: 'AB'[index]!})),
			bassProcessor: {
				latencyMs: 0,
				outputs: ['A', 'B'],
				delay: {stepMs, minimumMs: 0, maximumMs},
				gain: {stepDb: 0.5, minimumDb: -20, maximumDb: 6},
				invertsOutputs: true,
			},
		}),
	);

test('the subs against each other never fail on what the schema lets through', () => {
	let told = 0;
	fc.assert(
		fc.property(pairs, profile => {
			const {pair} = blend(blendInputs(profile));
			for (const {standsDb, wantedDb} of pair?.tones ?? [])
				for (const level of [standsDb, wantedDb]) {
					expect(Number.isFinite(level?.value ?? 0)).toBe(true);
					if (level) told++;
				}
			for (const gain of Object.values(pair?.trial?.gainsDb ?? {})) expect(Number.isFinite(gain)).toBe(true);
			expect(Number.isFinite(pair?.wanted?.addedMs ?? 0)).toBe(true);
			expect(Number.isFinite(pair?.wanted?.gainDb?.value ?? 0)).toBe(true);
			const ids = (pair?.blocks ?? []).flatMap(({steps}) => steps.map(({id}) => id));
			expect(new Set(ids).size).toBe(ids.length);
			for (const {delayMs} of solve(profile).outputs)
				expect(Number.isFinite(delayMs?.stepped ?? 0)).toBe(true);
		}),
		{numRuns: 150, seed: 20_260_418},
	);
	// Else nothing was tried.
	expect(told).toBeGreaterThan(10);
});
