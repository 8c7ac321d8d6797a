import fc from 'fast-check';
import {expect, test} from 'vitest';
import {boxState, delayOf, gainWithMaster, isInverted} from '../../../source/profile/ask/boxState.ts';
import {effectOf, lineOf, mainChannels, orElse} from '../../../source/profile/ask/lines.ts';
import type {Profile, SettingsSet} from '../../../source/profile/types.ts';
import {sampleProfile} from '../sample.ts';

const profile = sampleProfile();
const set = (own: Partial<SettingsSet>): SettingsSet => ({id: 'x', origin: 'found', channels: {}, ...own});

test('lineOf goes through the processor only where the sub hangs on an output that it has', () => {
	expect(lineOf(profile, 'FL')).toEqual({channel: 'FL'});
	expect(lineOf(profile, 'sub1')).toEqual({channel: 'LFE1', output: 'A'});
	expect(lineOf({...profile, bassProcessor: undefined}, 'sub1')).toEqual({channel: 'LFE1'});
	expect(mainChannels(profile).map(({id}) => id)).toEqual(['FL', 'FR']);
});

test('effectOf says what is not stated, and leaves what then to the asker', () => {
	const nothing = effectOf(profile, set({}), {channel: 'LFE1', output: 'A'});
	expect(nothing).toEqual({
		gainDb: 'unstated',
		delayMs: 'unstated',
		isInverted: false,
		crossoverHertz: 'unstated',
	});
	expect(effectOf(profile, undefined, {channel: 'FL'})).toEqual(nothing);
	expect(orElse(nothing.gainDb, 0)).toBe(0);
	expect(orElse(nothing.delayMs, undefined)).toBeUndefined();
	expect(orElse(3 as number | 'unstated', 0)).toBe(3);
});

test('effectOf adds up what receiver and processor do', () => {
	const both = set({
		channels: {LFE1: {delayMs: {stepped: 4}, trimDb: {stepped: 1.5}, polarityInverted: true}},
		outputs: {A: {delayMs: {stepped: 2.5}, gainDb: {stepped: -3}, polarityInverted: true}},
	});
	expect(effectOf(profile, both, {channel: 'LFE1', output: 'A'})).toMatchObject({
		gainDb: -1.5,
		delayMs: 6.5,
		isInverted: false,
	});
	expect(effectOf(profile, both, {channel: 'LFE1'})).toMatchObject({
		gainDb: 1.5,
		delayMs: 4,
		isInverted: true,
	});
});

test('a gain alone is a gain; a delay of the processor alone says nothing of the line', () => {
	const behind = set({outputs: {A: {delayMs: {stepped: 2.5}, gainDb: {stepped: -3}}}});
	const effect = effectOf(profile, behind, {channel: 'LFE1', output: 'A'});
	expect(effect).toMatchObject({gainDb: -3, delayMs: 'unstated'});
});

test('a distance entered is a negative delay at the receiver’s own speed of sound', () => {
	const entered = set({channels: {FL: {distanceMetres: {stepped: 3.43}}}});
	// 3.43 m at the usual 343 m/s are 10 ms; at a stated 350 m/s 9.8 ms.
	expect(effectOf(profile, entered, {channel: 'FL'}).delayMs).toBeCloseTo(-10, 9);
	const timing = {...profile.receiver!.timing, speedOfSoundMetresPerSecond: 350};
	const stated = {receiver: {...profile.receiver!, timing} as Profile['receiver']};
	expect(effectOf(stated, entered, {channel: 'FL'}).delayMs).toBeCloseTo(-9.8, 9);
});

test('effectOf and the state of the boxes agree wherever a set states everything', () => {
	const value = fc.integer({min: -20, max: 20}).map(step => step / 2);
	fc.assert(
		fc.property(value, value, value, value, fc.boolean(), fc.boolean(), value, (a, b, c, d, e, f, master) => {
			const whole = set({
				masterVolumeDb: master,
				channels: {LFE1: {trimDb: {stepped: a}, delayMs: {stepped: b}, polarityInverted: e}},
				outputs: {A: {gainDb: {stepped: c}, delayMs: {stepped: d}, polarityInverted: f}},
			});
			const line = lineOf(profile, 'sub1');
			const effect = effectOf(profile, whole, line);
			const state = boxState(profile, whole);
			expect(effect.gainDb).toBeCloseTo(gainWithMaster(state, line) - master, 9);
			expect(effect.delayMs).toBeCloseTo(delayOf(state, line), 9);
			expect(effect.isInverted).toBe(isInverted(state, line));
		}),
	);
});
