import {expect, test} from 'vitest';
import {parseProfile} from '../../../../source/profile/file/parse.ts';
import type {Profile, SettingsSet} from '../../../../source/profile/types.ts';
import type {BlendWish} from '../../../../source/study/calibration/blend/blendResult.ts';
import {polarities} from '../../../../source/study/calibration/blend/polarities.ts';
import {solve} from '../../../afresh.ts';
import olderSet from '../cases/polarity-of-an-older-set.json' with {type: 'json'};
import {roomProfile} from './room.ts';

const base = roomProfile({
	crossoverHertz: 80,
	mainsLimitHertz: 60,
	subLimitHertz: 25,
	arrivalMs: {FC: 8, sub1: 12, sub2: 14},
	levelDb: () => 75,
});
const wish = (sub1: boolean, sub2: boolean): BlendWish => ({
	offsetMs: 0,
	inverted: sub1,
	subs: new Map([
		['sub1', {laterMs: 0, isInverted: sub1}],
		['sub2', {laterMs: 0, isInverted: sub2}],
	]),
});
const set = (origin: SettingsSet['origin'], polarityInverted: boolean): SettingsSet => ({
	id: origin,
	origin,
	channels: {LFE1: {polarityInverted}},
});

test('a delay from distances never keeps the polarity that an older set was computed with', () => {
	const parsed = parseProfile(JSON.stringify(olderSet), 'case');
	if (!parsed.ok) throw new Error('the case does not parse');
	const output = solve(parsed.profile).outputs.find(({id}) => id === 'B')!;
	// 3.20 and 3.35 m at 343.4 m/s: 0.4 ms apart, of which A has 0.6 and B 0.2 in steps of 0.1 ms.
	expect(output.delayMs!.stepped).toBeCloseTo(0.2, 9);
	expect(output.polarityInverted).toBe(false);
});

test('without a verified blend a polarity found in the boxes or typed in stays, a computed one goes', () => {
	const of = (...settings: SettingsSet[]) => polarities({...base, settings}, undefined).ofChannel('LFE1');
	expect(of()).toBeUndefined();
	expect(of(set('found', true))).toBe(true);
	expect(of(set('entered', true))).toBe(true);
	expect(of(set('found', false), set('solved', true))).toBe(false);
	expect(of(set('solved', true))).toBe(false);
	expect(of(set('solved', false))).toBe(false);
});

test('a verified polarity goes to the box that turns it, else to the switch of the sub', () => {
	const plain = polarities(base, wish(true, true));
	expect(plain.ofChannel('LFE1')).toBe(true);
	expect(plain.atSubs).toEqual(['sub1', 'sub2']);
	const receiver = {...base.receiver!, invertsSubs: true};
	expect(polarities({...base, receiver}, wish(true, true))).toMatchObject({atSubs: []});
	const processed: Profile = {
		...base,
		bassProcessor: {
			latencyMs: 0,
			outputs: ['A', 'B'],
			delay: {stepMs: 0.1, minimumMs: 0, maximumMs: 30},
			gain: {stepDb: 0.5, minimumDb: -20, maximumDb: 6},
			invertsOutputs: true,
		},
		subs: base.subs!.map((sub, index) => ({...sub, processorOutput: 'AB'[index]!})),
	};
	const turned = polarities(processed, wish(false, true));
	expect(['A', 'B'].map(turned.ofOutput)).toEqual([undefined, undefined].map((_, index) => index === 1));
	expect(turned.ofChannel('LFE1')).toBeUndefined();
});
