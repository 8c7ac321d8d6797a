import {expect, test} from 'vitest';
import {usualChoicesHertz} from '../../../../source/profile/practice.ts';
import type {Profile} from '../../../../source/profile/types.ts';
import {suggestCrossovers} from '../../../../source/study/calibration/crossover/suggest.ts';
import {sentence} from '../sentence.ts';

const choicesHertz = [40, 60, 80, 100, 120, 150, 200];

function profileWith(change: Partial<Profile> = {}): Profile {
	return {
		format: 1,
		name: 'Invented room',
		date: '2026-04-18',
		room: {name: 'Invented room'},
		seats: [{id: 'sofa', name: 'Sofa', reference: true}],
		channels: [
			{id: 'FL', speaker: {lowLimitHertz: 55, box: 'vented'}},
			{id: 'FR', speaker: {lowLimitHertz: 55, box: 'vented'}},
			{id: 'TpSiL', speaker: {lowLimitHertz: 100, box: 'closed'}},
			{id: 'LFE1'},
		],
		subs: [{id: 'sub1', name: 'Sub', fedBy: 'LFE1', lowLimitHertz: 25, upperLimitHertz: 200}],
		receiver: {
			timing: {kind: 'delay', stepMs: 0.1, minimumMs: 0, maximumMs: 20},
			trim: {stepDb: 0.5, minimumDb: -12, maximumDb: 12},
			crossover: {
				choicesHertz,
				scope: 'per channel',
				fullRange: true,
				lfeLowPassChoicesHertz: [80, 100, 120, 150],
			},
			subOutputs: 1,
		},
		...change,
	};
}

const withCrossover = (change: Partial<NonNullable<Profile['receiver']>['crossover']>) => {
	const profile = profileWith();
	return {
		...profile,
		receiver: {...profile.receiver!, crossover: {...profile.receiver!.crossover, ...change}},
	};
};

test('suggestCrossovers plays full range where there is no sub', () => {
	const {channels} = suggestCrossovers(profileWith({subs: [], channels: [{id: 'FL'}, {id: 'FR'}]}));
	expect(channels.get('FL')).toMatchObject({hertz: 'full', ranking: [], fullRange: {defensible: true}});
});

test('suggestCrossovers takes an LFE channel without a named sub for one sub', () => {
	const {channels} = suggestCrossovers(profileWith({subs: []}));
	expect(channels.get('FL')!.hertz).toBe(80);
});

test('suggestCrossovers ranks common choices and says so without a receiver', () => {
	const {receiver: _, ...profile} = profileWith();
	const {channels, remarks} = suggestCrossovers(profile);
	expect(channels.get('FL')!.ranking.length).toBe(usualChoicesHertz.length);
	expect(remarks.map(({code}) => code)).toContain('crossover-choices-unknown');
});

test('suggestCrossovers leaves LFE channels out and ranks every choice for the others', () => {
	const {channels} = suggestCrossovers(profileWith());
	expect([...channels.keys()]).toEqual(['FL', 'FR', 'TpSiL']);
	expect(
		channels
			.get('FL')!
			.ranking.map(({hertz}) => hertz)
			.sort((a, b) => a - b),
	).toEqual(choicesHertz);
});

test('suggestCrossovers never leads with a crossover below the limit while another can be had', () => {
	for (const lowLimitHertz of [30, 55, 79, 99, 130, 199]) {
		const {channels} = suggestCrossovers(
			profileWith({channels: [{id: 'FC', speaker: {lowLimitHertz}}, {id: 'LFE1'}]}),
		);
		expect(channels.get('FC')!.hertz).toBeGreaterThanOrEqual(lowLimitHertz);
	}
});

test('suggestCrossovers takes the choice nearest to a limit above all of them and calls it a problem', () => {
	const {channels, remarks} = suggestCrossovers(
		profileWith({channels: [{id: 'TpC', speaker: {lowLimitHertz: 260}}, {id: 'LFE1'}]}),
	);
	expect(channels.get('TpC')!.hertz).toBe(200);
	expect(remarks).toContainEqual(
		expect.objectContaining({kind: 'problem', code: 'crossover-below-limit', about: ['TpC']}),
	);
});

// Common practice, no source: 80 Hz for an ordinary speaker and where nothing is known of it.
test('suggestCrossovers gives 80 Hz to a speaker reaching 55 Hz and to one of which nothing is known', () => {
	const {channels, remarks} = suggestCrossovers(
		profileWith({
			channels: [{id: 'FL', speaker: {lowLimitHertz: 55, box: 'vented'}}, {id: 'FR'}, {id: 'LFE1'}],
		}),
	);
	expect(channels.get('FL')!.hertz).toBe(80);
	expect(channels.get('FR')!.hertz).toBe(80);
	expect(channels.get('FR')!.limitAssumed).toBe(true);
	expect(remarks).toContainEqual(expect.objectContaining({kind: 'doubt', code: 'speaker-limit-unknown'}));
});

test('suggestCrossovers gives one frequency to all where the receiver takes only one', () => {
	const {channels, common} = suggestCrossovers(withCrossover({scope: 'common'}));
	expect(new Set([...channels.values()].map(({hertz}) => hertz)).size).toBe(1);
	expect(common!.hertz).toBeGreaterThanOrEqual(100);
	expect(common!.ranking.length).toBe(choicesHertz.length);
});

test('suggestCrossovers tells what one step down and one step up would change', () => {
	const fc = suggestCrossovers(profileWith()).channels.get('FL')!;
	expect(sentence(fc.oneDown)).toMatch(/^60 Hz: ripple [+−]\d/);
	expect(sentence(fc.oneUp)).toMatch(/^100 Hz: .*hear more easily where the sub stands/);
});

test('suggestCrossovers calls full range defensible for a deep speaker only', () => {
	const {channels} = suggestCrossovers(
		profileWith({
			channels: [
				{id: 'FL', speaker: {lowLimitHertz: 24, box: 'vented'}},
				{id: 'FR', speaker: {lowLimitHertz: 38}},
				{id: 'FC', speaker: {lowLimitHertz: 60}},
			],
		}),
	);
	expect(['FL', 'FR', 'FC'].map(id => channels.get(id as 'FL')!.fullRange.defensible)).toEqual([
		true,
		true,
		false,
	]);
});

// ITU-R BS.775-3, Annex 7 (known as a quotation): LFE content reaches 120 Hz.
test.each([
	[[80, 100, 120, 150], 120],
	[[90, 150, 200], 150],
	[[80, 100], 100],
])(
	'suggestCrossovers picks from LFE low-pass choices %j the lowest that keeps 120 Hz',
	(choices, expected) => {
		const {lfeLowPassHertz, remarks} = suggestCrossovers(withCrossover({lfeLowPassChoicesHertz: choices}));
		expect(lfeLowPassHertz).toBe(expected);
		expect(remarks.some(({code}) => code === 'lfe-low-pass-low')).toBe(expected < 120);
	},
);

test('suggestCrossovers names a filter that does not exist instead of failing', () => {
	const {channels, remarks} = suggestCrossovers(
		withCrossover({highPass: {kind: 'linkwitz-riley', order: 3}}),
	);
	expect(channels.size).toBe(3);
	expect(remarks).toContainEqual(expect.objectContaining({kind: 'problem', code: 'filter-does-not-exist'}));
});
