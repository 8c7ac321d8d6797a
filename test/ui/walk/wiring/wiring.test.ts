import {describe, expect, test} from 'vitest';
import {checkProfile} from '../../../../source/profile/file/parse.ts';
import type {Profile} from '../../../../source/profile/types.ts';
import {reduceRound, startRound} from '../../../../source/ui/walk/state.ts';
import {walkRound} from '../../../../source/ui/walk/stops.ts';
import {wiringPrompts} from '../../../../source/ui/walk/wiring/wiring.ts';
import {wiringOf} from '../../../../source/ui/walk/wiring/wiringOf.ts';
import {den} from '../../rooms.ts';

/** The profile after the answers to questions of the stop, by their ids without the stop's own name. */
function answered(profile: Profile, answers: ReadonlyArray<readonly [id: string, text: string]>): Profile {
	return answers.reduce((now, [id, text]) => {
		const prompt = wiringPrompts(now).find(each => each.id === `wiring:${id}`);
		if (!prompt) throw new Error(`There is no question ${id}.`);
		const taken = prompt.take(now, text, {takenAt: '2026-04-18T20:00:00.000Z'});
		if (taken.kind !== 'taken') throw new Error(`${id} took “${text}” as ${JSON.stringify(taken)}.`);
		expect(checkProfile(taken.next), id).toEqual([]);
		return taken.next;
	}, profile);
}

const shown = (profile: Profile, id: string) =>
	wiringPrompts(profile).find(each => each.id === `wiring:${id}`)?.values[0];

describe('cables', () => {
	test('the first answer enters all cables that are needed, so that none is called missing', () => {
		const profile = answered(den(), [['run:cable-FL', '12-6']]);
		expect(profile.wiring!.connections).toHaveLength(8);
		expect(wiringOf(profile).remarks.filter(({kind}) => kind === 'problem')).toEqual([]);
		// 12 ft 6 in by the international foot.
		expect(profile.wiring!.connections![0]).toMatchObject({from: 'receiver/FL', runMetres: 3.81});
		expect(shown(profile, 'run:cable-FL')).toMatch(/12′ 6″/);
	});

	test('a conductor replaces the one before, in whichever system', () => {
		const gauge = answered(den(), [['conductor:cable-FR', '16']]);
		expect(shown(gauge, 'conductor:cable-FR')).toBe('16 AWG');
		const area = answered(gauge, [['conductor:cable-FR', '2.5 mm2']]);
		expect(shown(area, 'conductor:cable-FR')).toBe('2.5 mm²');
		expect(area.wiring!.connections!.find(({id}) => id === 'cable-FR')!.awg).toBeUndefined();
	});

	test('a cable laid with plus and minus swapped is a problem until it is laid well', () => {
		const swapped = answered(den(), [['laid:cable-FC', '3']]);
		expect(wiringOf(swapped).remarks).toContainEqual(
			expect.objectContaining({code: 'polarity-reversed', about: ['cable-FC']}),
		);
		const well = answered(swapped, [['laid:cable-FC', '1']]);
		expect(wiringOf(well).remarks.filter(({code}) => code === 'polarity-reversed')).toEqual([]);
		expect(shown(well, 'laid:cable-FC')).toMatch(/plus to plus/);
	});

	test('a ladder is warned of where the speaker hangs overhead, mains plugs at every cable', () => {
		const cautions = Object.fromEntries(wiringPrompts(den()).map(({id, caution = ''}) => [id, caution]));
		expect(cautions['wiring:laid:cable-TpSiL']).toMatch(/unplugged.*ladder/);
		expect(cautions['wiring:laid:cable-FL']).toMatch(/unplugged/);
		expect(cautions['wiring:laid:cable-FL']).not.toMatch(/ladder/);
	});

	test('a way shorter than the straight line between its ends is asked about once', () => {
		const tape = [
			{from: 'wall:left', to: 'wall:right', metres: 4},
			{from: 'wall:front', to: 'wall:back', metres: 5},
			{from: 'FL', to: 'wall:left', metres: 3.5},
			{from: 'FL', to: 'wall:front', metres: 0.5},
			{from: 'FL', to: 'floor', metres: 1},
			{from: 'seat1', to: 'wall:left', metres: 2},
			{from: 'seat1', to: 'wall:front', metres: 3},
			{from: 'seat1', to: 'floor', metres: 1},
		];
		const placed = answered(den({tape, lengthUnit: 'm'}), [['place', '0.5 x 0.5 x 1']]);
		const prompt = wiringPrompts(placed).find(({id}) => id === 'wiring:run:cable-FL')!;
		const take = (text: string) => prompt.take(placed, text, {takenAt: '2026-04-18T20:00:00.000Z'});
		// Left to right 0.5 m to 3.5 m at one depth and height: 3 m in a straight line.
		expect(take('2.9')).toMatchObject({kind: 'taken', doubt: expect.stringContaining('3.00 m')});
		expect(take('3.1')).not.toMatchObject({doubt: expect.anything()});
	});

	test('a sub with the longest id still gets a cable that the profile takes', () => {
		const id = `s${'u'.repeat(59)}`;
		const profile = den({subs: [{id, name: 'Sub', fedBy: 'LFE1'}]});
		answered(profile, [[`laid:cable-${id}`, '1']]);
	});
});

describe('the place of the receiver', () => {
	test('is two or three lengths with an x between, and nothing else of them is kept', () => {
		const profile = answered(den({lengthUnit: 'm'}), [['place', '1,9 x 0.4']]);
		expect(profile.wiring!.equipment).toEqual([{id: 'receiver', leftWallMetres: 1.9, frontWallMetres: 0.4}]);
		expect(shown(profile, 'place')).toBe('1.90 m x 0.40 m');
	});

	test.each(['1.9', '1 x 2 x 3 x 4', 'x', '1.9 x far'])('refuses “%s”', text => {
		const prompt = wiringPrompts(den()).find(({id}) => id === 'wiring:place')!;
		expect(prompt.take(den(), text, {takenAt: ''}).kind).toBe('no');
	});
});

describe('outlets', () => {
	test('loads are asked once there is an outlet, and are held against its rating', () => {
		expect(wiringPrompts(den()).some(({id}) => id.startsWith('wiring:load'))).toBe(false);
		const profile = answered(den(), [
			['outlet:1', '10 A 230 V'],
			['load:receiver', '900'],
			['load:sub:sub1', '500 W on 1'],
			['otherLoad:1', 'Display 86 inch 400'],
		]);
		const [budget] = wiringOf(profile).outlets;
		// 1800 W of 10 A × 230 V.
		expect(budget).toMatchObject({watts: 1800, name: 'Strip 1'});
		expect(budget!.share).toBeCloseTo(1800 / 2300, 12);
		expect(shown(profile, 'otherLoad:1')).toBe('400 W on Strip 1');
	});

	test('a new rating and a new load replace the ones before', () => {
		const profile = answered(den(), [
			['outlet:1', '1500 VA'],
			['load:receiver', '900'],
			['outlet:1', '15'],
			['load:receiver', '600'],
		]);
		expect(profile.wiring!.outlets).toHaveLength(1);
		expect(shown(profile, 'outlet:1')).toBe('15 A, 120 V');
		expect(profile.wiring!.loads).toEqual([{name: 'Receiver', on: 'outlet1', watts: 600}]);
	});

	test.each(['230 V', '10 hp', '0 A', '10 A 16 A', ''])('refuses the rating “%s”', text => {
		const prompt = wiringPrompts(den()).find(({id}) => id === 'wiring:outlet:1')!;
		expect(prompt.take(den(), text, {takenAt: ''}).kind).toBe('no');
	});

	test('an outlet that is not there is refused', () => {
		const profile = answered(den(), [['outlet:1', '10']]);
		const prompt = wiringPrompts(profile).find(({id}) => id === 'wiring:load:receiver')!;
		expect(prompt.take(profile, '300 on 2', {takenAt: ''}).kind).toBe('no');
	});
});

test('the quick round never stops at the cables', () => {
	let state = startRound(walkRound, den(), undefined);
	const seen = [state.promptId];
	const answers = [
		'9-4',
		'9-2',
		'9-5',
		'6',
		'6-1',
		'7',
		'7-1',
		'11-2',
		// Nothing late, no walls, the receiver’s own noise, trims at zero.
		'',
		'',
		'',
		'',
		'74',
		'73',
		'75',
		'75',
		'74',
		'72',
		'72',
		'78',
		// No data sheets.
		'',
	];
	for (const text of answers) {
		state = reduceRound(walkRound, state, {kind: 'type', text});
		state = reduceRound(walkRound, state, {kind: 'take', takenAt: '2026-04-18T20:00:00.000Z'});
		seen.push(state.promptId);
	}

	expect(seen.filter(id => id.startsWith('wiring'))).toEqual([]);
	expect(state.promptId).toBe('dialIn');
});

test('the drawer opens from a question and leads back to it', () => {
	const start = startRound(walkRound, den(), 'tape:FC:seat1');
	const there = reduceRound(walkRound, start, {kind: 'drawer', drawer: 'wiring'});
	expect(there.promptId).toBe('wiring');
	for (const kind of ['nextStop', 'previousStop'] as const)
		expect(reduceRound(walkRound, there, {kind}).promptId).toBe('tape:FC:seat1');
});
