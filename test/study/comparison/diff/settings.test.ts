import fc from 'fast-check';
import {expect, test} from 'vitest';
import {matchProfiles} from '../../../../source/study/comparison/diff/match.ts';
import type {Cause, SettingChange} from '../../../../source/study/comparison/diff/profileDiff.ts';
import {settingChanges} from '../../../../source/study/comparison/diff/settings.ts';
import {type Arrangement, arrange, usualArrangement} from './exampleRoom.ts';

function changesBetween(before: Arrangement, after: Arrangement): SettingChange[] {
	const older = arrange(before);
	const newer = arrange(after);
	return settingChanges(older, newer, matchProfiles(older.profile, newer.profile).matches);
}

const total = ({parts}: SettingChange) => parts.reduce((sum, {amount}) => sum + amount, 0);
const amountOf = (change: SettingChange | undefined, cause: Cause) =>
	change?.parts.find(part => part.cause === cause)?.amount ?? 0;
const withSpeakers = (
	change: (speaker: Arrangement['speakers'][number]) => Partial<Arrangement['speakers'][number]>,
) => ({
	...usualArrangement,
	speakers: usualArrangement.speakers.map(speaker => ({...speaker, ...change(speaker)})),
});

test('`settingChanges` finds nothing between a profile and itself', () => {
	expect(changesBetween(usualArrangement, usualArrangement)).toEqual([]);
});

test('`settingChanges` puts a surround pulled 34.4 cm away on distance alone: 1 ms at 344 m/s', () => {
	const after = withSpeakers(({id, metres}) => (id === 'LS' ? {metres: metres + 0.344} : {}));
	const [change, ...others] = changesBetween(usualArrangement, after);
	expect(others).toEqual([]);
	expect(change).toMatchObject({about: 'LS', setting: 'delay', unit: 'ms'});
	expect(amountOf(change, 'distance')).toBeCloseTo(-1, 9);
	expect(change?.change).toBeCloseTo(-1, 9);
});

test('`settingChanges` puts a wireless link of 4 ms in one channel on latency there, and on the common offset elsewhere', () => {
	const after = withSpeakers(({id}) => (id === 'FR' ? {latencyMs: 4} : {}));
	const changes = changesBetween(usualArrangement, after);
	const of = (id: string) => changes.find(change => change.about === id);
	expect(of('FR')).toBeUndefined();
	expect(of('FL')?.parts.map(({cause}) => cause)).toContain('common offset');
	expect(amountOf(of('FL'), 'common offset')).toBeCloseTo(4, 9);
	expect(amountOf(of('FL'), 'latency')).toBe(0);
});

test('`settingChanges` puts a new receiver constant of 340 m/s on the constant: t·3 mm/ms', () => {
	const before = {...usualArrangement, kind: 'distance'} as const;
	const changes = changesBetween(before, {...before, receiverSpeed: 340});
	const left = changes.find(({about}) => about === 'FL');
	expect(amountOf(left, 'receiver constant')).toBeCloseTo(((2.87 / 344) * 1000 * -3) / 1000, 9);
});

test('`settingChanges` puts a speaker that lost 2 dB on the level at the seat', () => {
	const after = withSpeakers(({id, levelDb}) => (id === 'FC' ? {levelDb: levelDb - 2} : {}));
	const changes = changesBetween(usualArrangement, after);
	expect(changes).toHaveLength(1);
	expect(changes[0]).toMatchObject({about: 'FC', setting: 'trim', change: 2});
	expect(amountOf(changes[0], 'level at seat')).toBeCloseTo(2, 9);
});

test('`settingChanges` separates a trim in force from the level when the first round was taken with other trims', () => {
	const changes = changesBetween(usualArrangement, {...usualArrangement, trimInForceDb: 3, targetDb: 76});
	expect(changes.length).toBeGreaterThan(0);
	for (const change of changes) {
		expect(amountOf(change, 'trim in force')).toBeCloseTo(3, 9);
		expect(amountOf(change, 'level at seat')).toBeCloseTo(-3, 9);
		expect(amountOf(change, 'target')).toBeCloseTo(1, 9);
	}
});

test('`settingChanges` calls what was typed in otherwise than computed chosen', () => {
	const older = arrange(usualArrangement);
	const newer = arrange(usualArrangement);
	const settings = [
		{id: 'hand', origin: 'entered' as const, channels: {FL: {delayMs: {stepped: 5}, trimDb: {stepped: -3}}}},
	];
	const changes = settingChanges(
		older,
		{...newer, profile: {...newer.profile, settings}},
		matchProfiles(older.profile, newer.profile).matches,
	);
	expect(changes.map(({setting}) => setting).sort()).toEqual(['delay', 'trim']);
	for (const change of changes) {
		expect(change.parts).toHaveLength(1);
		expect(amountOf(change, 'chosen')).toBeCloseTo(change.change!, 9);
	}
});

test('`settingChanges` shows both as delays when the entry was a distance and is a delay', () => {
	const changes = changesBetween({...usualArrangement, kind: 'distance'}, usualArrangement);
	const left = changes.find(({about, setting}) => about === 'FL' && setting === 'delay');
	expect(left?.notSplit).toContain('was a distance and is a delay');
	// 2.87 m at 344 m/s arrives after 8.343 ms; as a distance at 343 m/s it is typed in as 2.86 m.
	expect(left?.before).toBeCloseTo(-2.86 / 0.343, 9);
	expect(total(left!)).toBeCloseTo(left!.change!, 9);
});

test('`settingChanges` leaves the whole change unexplained, with the reason, when a profile holds no level', () => {
	const older = arrange(usualArrangement);
	const newer = arrange(withSpeakers(({id}) => (id === 'FL' ? {levelDb: 72} : {})));
	const channels = older.solution.channels.map(({level: _, ...channel}) => channel);
	const without = {...older, solution: {...older.solution, channels}};
	const changes = settingChanges(without, newer, matchProfiles(older.profile, newer.profile).matches);
	expect(changes[0]?.notSplit).toBe('no level in the older profile');
	expect(total(changes[0]!)).toBe(changes[0]!.change);
});

const decimal = (min: number, max: number) => fc.double({min, max, noNaN: true});
const anyArrangement = (kind: 'delay' | 'distance'): fc.Arbitrary<Arrangement> =>
	fc.record({
		speakers: fc.tuple(
			...usualArrangement.speakers.map(({id}) =>
				fc.record({
					id: fc.constant(id),
					metres: decimal(1, 6),
					latencyMs: decimal(0, 3),
					levelDb: decimal(70, 80),
					lowLimitHertz: decimal(30, 130),
				}),
			),
		),
		speedOfSound: decimal(335, 350),
		kind: fc.constant(kind),
		receiverSpeed: decimal(330, 350),
		targetDb: decimal(70, 80),
		weightingCorrectionDb: decimal(0, 2),
		backgroundCorrectionDb: decimal(-1, 0),
		meterOffsetDb: decimal(-1, 1),
		trimInForceDb: decimal(-3, 3),
		masterVolumeDb: decimal(-20, 0),
		timingShift: decimal(-0.05, 0.05),
		trimShift: decimal(-2, 2),
	});

test.each(['delay', 'distance'] as const)(
	'the parts of every change add up to it, and nothing that follows the laws stays unexplained (%s)',
	kind => {
		fc.assert(
			fc.property(anyArrangement(kind), anyArrangement(kind), (before, after) => {
				for (const change of changesBetween(before, after)) {
					expect(Math.abs(total(change) - change.change!)).toBeLessThan(1e-6);
					expect(Math.abs(amountOf(change, 'unexplained'))).toBeLessThan(1e-6);
					// Rounding to the nearest step is off by half a step at most on each side, and the shared part by as much.
					const step = change.setting === 'trim' ? 0.5 : change.setting === 'delay' ? 0.1 : 0.01;
					expect(Math.abs(amountOf(change, 'rounding'))).toBeLessThanOrEqual(2 * step + 1e-9);
				}
			}),
			{numRuns: 200, seed: 5},
		);
	},
);

test('the parts add up whatever the sets hold, typed in by hand or not', () => {
	const typed = fc.record({
		delayMs: decimal(0, 20),
		trimDb: decimal(-12, 12),
		crossoverHertz: decimal(40, 200),
	});
	fc.assert(
		fc.property(anyArrangement('delay'), anyArrangement('delay'), typed, typed, (before, after, was, is) => {
			const set = ({delayMs, trimDb, crossoverHertz}: typeof was) => [
				{
					id: 'hand',
					origin: 'entered' as const,
					channels: {FL: {delayMs: {stepped: delayMs}, trimDb: {stepped: trimDb}, crossoverHertz}},
				},
			];
			const older = arrange(before);
			const newer = arrange(after);
			const changes = settingChanges(
				{...older, profile: {...older.profile, settings: set(was)}},
				{...newer, profile: {...newer.profile, settings: set(is)}},
				matchProfiles(older.profile, newer.profile).matches,
			);
			for (const change of changes) expect(Math.abs(total(change) - change.change!)).toBeLessThan(1e-6);
		}),
		{numRuns: 200, seed: 6},
	);
});

test('`settingChanges` tells a distance from the plain delay of a profile without a receiver, in its own unit', () => {
	const older = arrange({...usualArrangement, kind: 'distance'});
	const {receiver: _, ...without} = arrange(usualArrangement).profile;
	const newer = {profile: without, solution: arrange(usualArrangement).solution};
	const changes = settingChanges(older, newer, matchProfiles(older.profile, without).matches);
	const left = changes.find(({about, setting}) => about === 'FL' && setting === 'delay');
	expect(left).toMatchObject({unit: 'ms', notSplit: 'the entry was a distance and is a delay'});
	expect(left?.before).toBeUndefined();
});
