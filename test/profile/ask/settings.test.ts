import {expect, test} from 'vitest';
import {
	decidedSettings,
	settingsInForce,
	solvedSettings,
	standingSettings,
	usualMasterDb,
} from '../../../source/profile/ask/settings.ts';
import type {SettingsSet} from '../../../source/profile/types.ts';

const set = (id: string, origin: SettingsSet['origin']): SettingsSet => ({id, origin, channels: {}});
const [before, solved, entered, after] = [
	set('before', 'found'),
	set('solved', 'solved'),
	set('entered', 'entered'),
	set('after', 'found'),
];

test('without settings there is no answer', () => {
	for (const ask of [decidedSettings, standingSettings, solvedSettings]) {
		expect(ask({})).toBeUndefined();
		expect(ask({settings: []})).toBeUndefined();
	}
});

test('a set that was only found is nobody’s decision, and stands where nothing was decided', () => {
	expect(decidedSettings({settings: [before, after]})).toBeUndefined();
	expect(standingSettings({settings: [before, after]})).toBe(after);
});

test('the last one solved or entered is decided, whatever was found after it', () => {
	const settings = [before, solved, entered, after];
	expect(decidedSettings({settings})).toBe(entered);
	expect(standingSettings({settings})).toBe(entered);
	expect(solvedSettings({settings})).toBe(solved);
});

test('settingsInForce finds the set that a reading names, or takes the one written into it', () => {
	const settings = [before, solved];
	const own = {channels: {FL: {trimDb: {stepped: 1}}}};
	expect(settingsInForce({settings}, {inForce: 'solved'})).toBe(solved);
	expect(settingsInForce({settings}, {inForce: own})).toBe(own);
	expect(settingsInForce({settings}, {inForce: 'lost'})).toBeUndefined();
	expect(settingsInForce({settings}, {})).toBeUndefined();
});

test('usualMasterDb is what most readings were taken at, of several the softest, in whatever order they come', () => {
	const at = (masterVolumeDb: number) => ({inForce: {channels: {}, masterVolumeDb}});
	expect(usualMasterDb({}, [{}, {inForce: 'lost'}])).toBeUndefined();
	expect(usualMasterDb({}, [at(-20), at(-18), at(-18)])).toBe(-18);
	expect(usualMasterDb({}, [at(-18), at(-20)])).toBe(-20);
	expect(usualMasterDb({}, [at(-20), at(-18)])).toBe(-20);
	const stored = {...set('a', 'found'), masterVolumeDb: -10};
	expect(usualMasterDb({settings: [stored]}, [{inForce: 'a'}, {inForce: 'a'}, at(-20)])).toBe(-10);
});
