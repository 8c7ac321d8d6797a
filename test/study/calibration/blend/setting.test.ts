import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import type {CollectedPair} from '../../../../source/study/calibration/blend/collect.ts';
import {blendPaths} from '../../../../source/study/calibration/blend/paths.ts';
import {addableDelays, planSetting} from '../../../../source/study/calibration/blend/setting.ts';
import {roomProfile} from './room.ts';

const truth = {
	crossoverHertz: 80,
	mainsLimitHertz: 80,
	subLimitHertz: 25,
	arrivalMs: {FC: 8, sub1: 12, sub2: 14},
	levelDb: () => 75,
};

function pairOf(
	profile: Profile,
	kind: 'subs' | 'mains',
	delays?: {FC: number; LFE1: number},
): CollectedPair {
	const groups =
		kind === 'mains'
			? ({kind, still: ['FC'], moved: ['sub1', 'sub2']} as const)
			: ({kind, still: ['sub1'], moved: ['sub2']} as const);
	return {
		...groups,
		id: kind,
		paths: blendPaths(profile, undefined, groups),
		tones: [],
		remarks: [],
		...(delays && {
			standing: {
				channels: {FC: {delayMs: {stepped: delays.FC}}, LFE1: {delayMs: {stepped: delays.LFE1}}},
			},
		}),
	};
}

test('planSetting has no way where two subs hang on one line', () => {
	const profile = roomProfile(truth);
	expect(planSetting(profile, pairOf(profile, 'subs', {FC: 5, LFE1: 5}), 2, false)).toBeUndefined();
});

test('planSetting tells a change alone where what stands is not known', () => {
	const profile = roomProfile(truth);
	expect(planSetting(profile, pairOf(profile, 'mains'), 1.234, false)).toEqual({
		actions: [{box: 'receiver', about: 'LFE1', what: 'delay', change: expect.closeTo(1.2, 9)}],
		addedMs: expect.closeTo(1.2, 9),
		leftMs: expect.closeTo(0.034, 9),
	});
});

test('planSetting changes nothing for less than half a step', () => {
	const profile = roomProfile(truth);
	expect(planSetting(profile, pairOf(profile, 'mains', {FC: 5, LFE1: 5}), 0.04, false)!.actions).toEqual([]);
});

test('planSetting delays the mains when the subs are at their least', () => {
	const profile = roomProfile(truth);
	expect(planSetting(profile, pairOf(profile, 'mains', {FC: 5, LFE1: 1}), -3, false)).toMatchObject({
		actions: [{box: 'receiver', about: 'FC', from: 5, to: 8}],
		addedMs: expect.closeTo(-3, 9),
	});
});

test('planSetting says what is left when no box reaches far enough', () => {
	const profile = roomProfile(truth);
	const plan = planSetting(profile, pairOf(profile, 'mains', {FC: 28, LFE1: 1}), -9, false)!;
	expect(plan.addedMs).toBeCloseTo(-2, 9);
	expect(plan.leftMs).toBeCloseTo(-7, 9);
});

test('planSetting turns the polarity where a box can, and at the sub where none can', () => {
	const plain = roomProfile(truth);
	const at = (profile: Profile) =>
		planSetting(profile, pairOf(profile, 'mains', {FC: 5, LFE1: 5}), 0, true)!.actions;
	expect(at(plain)).toEqual([
		{box: 'sub', about: 'sub1', what: 'polarity'},
		{box: 'sub', about: 'sub2', what: 'polarity'},
	]);
	expect(at({...plain, receiver: {...plain.receiver!, invertsSubs: true}})).toEqual([
		{box: 'receiver', about: 'LFE1', what: 'polarity'},
	]);
});

test('addableDelays stays within half a period, in steps of the box, and within its limits', () => {
	const profile = roomProfile(truth);
	const delays = addableDelays(profile, pairOf(profile, 'mains', {FC: 5, LFE1: 2}), 80);
	expect(Math.min(...delays)).toBe(-2);
	expect(Math.max(...delays)).toBeCloseTo(6.3, 9);
	for (const delay of delays) expect(delay * 10).toBeCloseTo(Math.round(delay * 10), 6);
});
