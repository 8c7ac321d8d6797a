import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {isLfe} from '../../../source/profile/channels.ts';
import type {Connection, Profile} from '../../../source/profile/types.ts';
import type {Positions} from '../../../source/study/wiring/result.ts';
import {wiring} from '../../../source/study/wiring/wiring.ts';

const profile = (own: Partial<Profile> = {}): Profile => ({
	format: 1,
	name: 'Invented den',
	date: '2026-03-01',
	room: {name: 'Invented den'},
	seats: [{id: 'sofa', name: 'Sofa', reference: true}],
	channels: [
		{id: 'FL', speaker: {impedanceOhms: 8}},
		{id: 'FR', speaker: {impedanceOhms: 8}},
		{id: 'TpFL', speaker: {impedanceOhms: 4}},
		{id: 'LFE1'},
	],
	subs: [
		{id: 'sub1', name: 'Front sub', fedBy: 'LFE1', processorOutput: 'A'},
		{id: 'sub2', name: 'Back sub', fedBy: 'LFE1', processorOutput: 'B'},
	],
	bassProcessor: {
		latencyMs: 3,
		outputs: ['A', 'B'],
		delay: {stepMs: 0.1, minimumMs: 0, maximumMs: 20},
		gain: {stepDb: 0.5, minimumDb: -20, maximumDb: 6},
	},
	...own,
});

const withCables = (...connections: Connection[]) => profile({wiring: {connections}});
const cable = (id: string, from: string, to: string, own: Partial<Connection> = {}): Connection => ({
	id,
	from,
	to,
	kind: 'speaker',
	...own,
});
const complete = [
	cable('c1', 'receiver/FL', 'FL/speaker'),
	cable('c2', 'receiver/FR', 'FR/speaker'),
	cable('c3', 'receiver/TpFL', 'TpFL/speaker'),
	cable('c4', 'receiver/LFE1', 'processor/in 1', {kind: 'line'}),
	cable('c5', 'processor/A', 'sub1/line in', {kind: 'line'}),
	cable('c6', 'processor/B', 'sub2/line in', {kind: 'line'}),
];
const codes = (of: Profile, positions?: Positions) => wiring(of, positions).remarks.map(({code}) => code);

describe('wiring without any entry', () => {
	test('proposes one cable for each speaker, one to the processor and one to each sub, and accuses nobody', () => {
		const {cables, remarks} = wiring(profile());
		expect(cables.map(({from, to}) => `${from} > ${to}`)).toEqual([
			'receiver/FL > FL/speaker',
			'receiver/FR > FR/speaker',
			'receiver/TpFL > TpFL/speaker',
			'receiver/LFE1 > processor/in LFE1',
			'processor/A > sub1/line in',
			'processor/B > sub2/line in',
		]);
		expect(remarks.map(({code}) => code)).toEqual(['lengths-unknown']);
	});

	test('feeds subs straight from the receiver where there is no processor', () => {
		const direct = profile({
			bassProcessor: undefined,
			subs: [{id: 'sub1', name: 'Sub', fedBy: 'LFE1'}],
		});
		expect(wiring(direct).cables.at(-1)).toMatchObject({
			from: 'receiver/LFE1',
			to: 'sub1/line in',
			kind: 'line',
		});
	});
});

describe('mistakes', () => {
	test('a complete list has none', () => {
		expect(codes(withCables(...complete))).toEqual(['lengths-unknown']);
	});

	test.each(complete.map(({id}) => id))('cable-missing is said when %s is left out', id => {
		expect(codes(withCables(...complete.filter(each => each.id !== id)))).toContain('cable-missing');
	});

	test('two cables on one receiver terminal are named with both ids', () => {
		const result = wiring(withCables(...complete, cable('c7', 'receiver/FL', 'den/spare')));
		const taken = result.remarks.find(({code}) => code === 'terminal-taken');
		expect(taken).toMatchObject({about: ['receiver/FL'], facts: {cables: ['c1', 'c7']}});
	});

	test('two line cables from one output need a Y-lead, which is no mistake', () => {
		const direct = profile({
			bassProcessor: undefined,
			subs: [
				{id: 'sub1', name: 'One', fedBy: 'LFE1'},
				{id: 'sub2', name: 'Two', fedBy: 'LFE1'},
			],
			channels: [{id: 'LFE1'}],
			wiring: {
				connections: [
					cable('a', 'receiver/LFE1', 'sub1/in', {kind: 'line'}),
					cable('b', 'receiver/LFE1', 'sub2/in', {kind: 'line'}),
				],
			},
		});
		expect(codes(direct)).toContain('line-split');
		expect(codes(direct)).not.toContain('terminal-taken');
	});

	test('reversed ends, crossed channels, outputs on outputs and swapped polarity each get their own sentence', () => {
		const swap = (id: string, other: Connection) => complete.map(each => (each.id === id ? other : each));
		expect(codes(withCables(...swap('c1', cable('c1', 'FL/speaker', 'receiver/FL'))))).toContain(
			'ends-reversed',
		);
		const crossed = swap('c1', cable('c1', 'receiver/FR', 'FL/speaker'));
		expect(codes(withCables(...crossed))).toEqual(
			expect.arrayContaining(['channels-crossed', 'terminal-taken']),
		);
		const alike = cable('c8', 'receiver/LFE1', 'processor/B', {kind: 'line'});
		expect(codes(withCables(...complete, alike))).toContain('ends-alike');
		expect(codes(withCables(...swap('c2', {...complete[1]!, polarity: 'reversed'})))).toContain(
			'polarity-reversed',
		);
	});
});

describe('lengths and conductors', () => {
	const positions: Positions = new Map([
		['FL', {x: 1, y: 0.5, z: 1}],
		['TpFL', {x: 1, y: 2, z: 2.4}],
	]);
	const equipment = [{id: 'receiver', leftWallMetres: 3, frontWallMetres: 0.5, heightMetres: 0.5}];

	test('runs are estimated along the walls: by the floor for low speakers, straight up for overheads', () => {
		const {cables} = wiring(profile({wiring: {equipment}}), positions);
		// FL: 2 m across, 0 along, 1 m down and 0.5 m up. TpFL: 2 m across, 1.5 m along, 1.9 m up.
		expect(cables.find(({id}) => id === 'cable-FL')?.run?.metres).toBeCloseTo(3.5, 9);
		expect(cables.find(({id}) => id === 'cable-TpFL')?.run?.metres).toBeCloseTo(5.4, 9);
		expect(cables.find(({id}) => id === 'cable-FL')?.cutMetres).toBeCloseTo(4, 9);
	});

	test('a measured run shorter than the straight line is refused', () => {
		const short = profile({
			wiring: {equipment, connections: [{...complete[0]!, runMetres: 1, slackMetres: 0.2}]},
		});
		expect(codes(short, positions)).toContain('run-too-short');
	});

	test('a conductor that takes more than 5 % of the impedance is named with the one that will do', () => {
		const thin = profile({
			wiring: {connections: [{...complete[2]!, runMetres: 12, slackMetres: 0, areaSquareMillimetres: 0.75}]},
		});
		const remark = wiring(thin).remarks.find(({code}) => code === 'conductor-thin');
		// 4 Ω and 12 m: 1.5 mm² carries 8.70 m, 2.5 mm² 14.50 m.
		expect(remark?.facts).toMatchObject({needs: {areaSquareMillimetres: 2.5}, cutMetres: 12});
	});

	test('the sum to buy is the sum of what is cut, whatever the lengths', () => {
		fc.assert(
			fc.property(
				fc.array(fc.double({min: 0.1, max: 30, noNaN: true}), {minLength: 1, maxLength: 8}),
				runs => {
					const connections = runs.map((runMetres, index) =>
						cable(`v${index}`, `player/out ${index}`, `screen/in ${index}`, {kind: 'video', runMetres}),
					);
					const {totals, cables} = wiring(withCables(...connections));
					const cut = cables.reduce((sum, {cutMetres}) => sum + (cutMetres ?? 0), 0);
					expect(totals.reduce((sum, {metres}) => sum + metres, 0)).toBeCloseTo(cut, 9);
				},
			),
		);
	});
});

describe('power', () => {
	const strip = {
		id: 'strip',
		name: 'Strip behind the rack',
		kind: 'strip' as const,
		volts: 230,
		limitAmperes: 10,
	};
	const loaded = (watts: number) =>
		profile({wiring: {outlets: [strip], loads: [{name: 'Receiver', on: 'strip', watts}]}});

	test('2300 VA is the whole of 10 A at 230 V; above 80 % it is said, above 100 % it is a problem', () => {
		expect(wiring(loaded(1150)).outlets[0]?.share).toBeCloseTo(0.5, 12);
		expect(codes(loaded(1839))).not.toContain('outlet-close');
		expect(codes(loaded(1841))).toContain('outlet-close');
		expect(codes(loaded(2301))).toContain('outlet-overloaded');
	});

	test('the power factor counts for amperes and not for watts', () => {
		const supply = {
			id: 'b',
			name: 'Supply',
			kind: 'ups' as const,
			volts: 230,
			limitWatts: 600,
			limitVoltAmperes: 700,
		};
		const both = profile({
			wiring: {outlets: [supply], loads: [{name: 'Processor', on: 'b', watts: 420, powerFactor: 0.6}]},
		});
		// 420 W of 600 W is 70 %, 700 VA of 700 VA is 100 %: the tighter one is reported.
		expect(wiring(both).outlets[0]).toMatchObject({share: 1, limit: '700 VA'});
	});

	test('a load on an outlet that does not exist is named', () => {
		const lost = profile({wiring: {outlets: [strip], loads: [{name: 'Amplifier', on: 'wall', watts: 10}]}});
		expect(codes(lost)).toContain('load-without-outlet');
	});
});

test('mains come last in the order, after everything that makes a signal', () => {
	const {order} = wiring(withCables(...complete, cable('m1', 'strip/1', 'receiver/mains', {kind: 'mains'})));
	expect(order.at(-1)?.cables).toEqual(['m1']);
	expect(order.map(({code}) => code)).toEqual(['all-off', 'overheads', 'speakers', 'lines', 'power-last']);
	const listed = order.flatMap(({cables}) => cables);
	expect(new Set(listed).size).toBe(listed.length);
	expect(listed.length).toBe(7);
});

test('mains and signal closer than the table are told to part', () => {
	const near = profile({
		wiring: {
			connections: [cable('m1', 'strip/1', 'receiver/mains', {kind: 'mains'}), ...complete],
			parallelRuns: [{mains: 'm1', signal: 'c4', parallelMetres: 3, gapMetres: 0.05}],
		},
	});
	// Unscreened beside unscreened, no divider: 200 mm by EN 50174-2:2000.
	const found = wiring(near).remarks.find(({code}) => code === 'separation');
	expect(found).toMatchObject({about: ['c4'], facts: {mains: 'm1', gapMetres: 0.05, usualMetres: 0.2}});
});

test('every channel is served whatever the arrangement', () => {
	const {cables} = wiring(profile());
	for (const {id} of profile().channels) {
		if (!isLfe(id)) expect(cables.some(({to}) => to.startsWith(`${id}/`))).toBe(true);
	}
});

describe('ends are held against the profile', () => {
	const cable = (id: string, from: string, to: string) => ({
		id,
		from,
		to,
		kind: 'speaker' as const,
		label: `${from} ${to}`,
	});
	const withCables = (...connections: Array<ReturnType<typeof cable>>) => profile({wiring: {connections}});
	const unknownEnds = (of: Profile) =>
		wiring(of).remarks.flatMap(remark => (remark.code === 'end-unknown' ? [remark.facts.end] : []));

	test('capitals and blanks make no other terminal', () => {
		const twoWays = withCables(
			cable('a', 'receiver/FL', 'FL/speaker'),
			cable('b', 'Receiver/fl ', 'fl /Speaker'),
		);
		expect(codes(twoWays).filter(code => code === 'terminal-taken')).toHaveLength(2);
		expect(unknownEnds(twoWays)).toEqual([]);
	});

	test('an end that names a channel the profile lacks, or nothing at all, is named', () => {
		const strays = withCables(
			cable('a', 'receiver/TpBC', 'TpBC/speaker'),
			cable('b', 'receiver/FL', 'hallway/speaker'),
		);
		expect(unknownEnds(strays)).toEqual(['receiver/TpBC', 'TpBC/speaker', 'hallway/speaker']);
	});

	test('one id for two cables is a problem, told once', () => {
		const twice = withCables(
			cable('a', 'receiver/FL', 'FL/speaker'),
			cable('a', 'receiver/FR', 'FR/speaker'),
		);
		expect(codes(twice).filter(code => code === 'cable-twice')).toHaveLength(1);
	});
});
