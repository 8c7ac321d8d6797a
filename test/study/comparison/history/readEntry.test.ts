import fc from 'fast-check';
import {expect, test} from 'vitest';
import {readEntry} from '../../../../source/study/comparison/history/readEntry.ts';
import {responseFrequencies} from '../../../../source/study/hearing/responses.ts';

const reading = (decibels: number, extra: object = {}) => ({
	source: 'FL',
	seat: 'sofa',
	decibels,
	weighting: 'Z',
	round: 'first',
	inForce: 'found',
	...extra,
});
const profile = {
	name: 'Spring',
	date: '2026-04-18',
	room: {name: 'Attic'},
	seats: [{id: 'chair'}, {id: 'sofa', reference: true}],
	channels: [{id: 'FL'}, {id: 'LFE1'}],
	tape: [
		{from: 'FL', to: 'sofa', metres: 2},
		{from: 'sofa', to: 'FL', metres: 2.02},
		{from: 'FL', to: 'sofa', metres: 9, setAside: true},
		{from: 'FL', to: 'chair', metres: 3},
	],
	meter: [
		reading(75),
		reading(75),
		reading(60, {signal: {kind: 'tone', hertz: 80}}),
		reading(90, {round: 'proof'}),
	],
	settings: [
		{id: 'found', origin: 'found', masterVolumeDb: -20, channels: {FL: {trimDb: {stepped: 2}}}},
		{id: 'now', origin: 'solved', channels: {FL: {trimDb: {stepped: -1.5}}}},
	],
};

test.each([
	null,
	3,
	'text',
	[],
	{},
	{name: 'x', date: '2026-13-45', room: {name: 'r'}},
	{name: 'x', date: '2026-01-01'},
])('`readEntry` takes %j for no profile', value => {
	expect(readEntry(value, 'x')).toBeUndefined();
});

test('`readEntry` averages tape and meter at the reference seat and takes trim and master volume out', () => {
	const figures = readEntry(profile, 'spring')!.channels.get('FL')!;
	expect(figures.distanceMetres).toBeCloseTo(2.01, 9);
	expect(figures.levelDb).toBeCloseTo(75, 9);
	expect(figures.ownDb).toBeCloseTo(75 - 2 + 20, 9);
	expect(figures.trimDb).toBe(-1.5);
	expect(figures.sigmaDb).toBeCloseTo(0.5 / Math.SQRT2, 9);
});

test('`readEntry` leaves out the LFE channel, which has no speaker of its own', () => {
	expect([...readEntry(profile, 'spring')!.channels.keys()]).toEqual(['FL']);
});

test('`readEntry` never throws, whatever JSON it is given', () => {
	const spoilt = fc.record({
		name: fc.constant('x'),
		date: fc.constant('2026-01-01'),
		room: fc.constant({name: 'r'}),
		seats: fc.jsonValue(),
		channels: fc.oneof(fc.jsonValue(), fc.array(fc.record({id: fc.jsonValue(), speaker: fc.jsonValue()}))),
		subs: fc.oneof(fc.jsonValue(), fc.array(fc.record({id: fc.string(), fedBy: fc.jsonValue()}))),
		tape: fc.oneof(
			fc.jsonValue(),
			fc.array(fc.record({from: fc.constant('FL'), to: fc.jsonValue(), metres: fc.jsonValue()})),
		),
		meter: fc.oneof(
			fc.jsonValue(),
			fc.array(fc.record({source: fc.jsonValue(), decibels: fc.jsonValue(), inForce: fc.jsonValue()})),
		),
		settings: fc.oneof(fc.jsonValue(), fc.array(fc.record({id: fc.string(), channels: fc.jsonValue()}))),
	});
	fc.assert(
		fc.property(spoilt, value => {
			expect(readEntry(value, 'x')?.room).toBe('r');
		}),
		{numRuns: 300, seed: 3},
	);
});

test('`readEntry` takes dip and decay of the newest response at the reference seat, and bears with what is none', () => {
	const response = (depth: number, seconds: number, extra: object = {}) => ({
		source: 'FL',
		seat: 'sofa',
		decays: [{hertz: 500, t20Seconds: seconds}],
		points: {
			levelsDb: [...responseFrequencies()].map(
				hertz => -20 - depth * Math.exp(-((Math.log2(hertz / 63) / 0.25) ** 2)),
			),
		},
		...extra,
	});
	const responses = [
		response(20, 0.5),
		response(12, 0.3),
		response(20, 0.6, {seat: 'chair'}),
		response(20, 0.7, {part: 'subs'}),
		response(20, 0.8, {setAside: true}),
		{source: 'FL', seat: 'sofa', points: {levelsDb: ['loud']}},
		{source: 'FL', seat: 'sofa', points: null},
	];
	const figures = readEntry({...profile, responses}, 'spring')!.channels.get('FL')!;
	expect(figures.decaySeconds).toBe(0.3);
	expect(figures.dip!.hertz).toBeCloseTo(63, -0.5);
	expect(figures.dip!.aboveDb).toBeGreaterThan(-12);
	expect(figures.dip!.aboveDb).toBeLessThan(-8);
	expect(readEntry({...profile, responses: 'none'}, 'spring')!.channels.get('FL')).not.toHaveProperty('dip');
});
