import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {planSetting, reachOf} from '../../../../source/study/calibration/blend/actions.ts';
import {roomProfile} from './room.ts';

const profile = roomProfile({
	crossoverHertz: 80,
	mainsLimitHertz: 80,
	subLimitHertz: 25,
	arrivalMs: {FC: 8, sub1: 12, sub2: 14},
	levelDb: () => 75,
});
const all = ['sub1', 'sub2'];
const set = (FC: number, LFE1: number) => ({
	channels: {FC: {delayMs: {stepped: FC}}, LFE1: {delayMs: {stepped: LFE1}}},
});
const bassProcessor = {
	latencyMs: 0,
	outputs: ['A', 'B'],
	delay: {stepMs: 0.1, minimumMs: 0, maximumMs: 30},
	gain: {stepDb: 0.5, minimumDb: -20, maximumDb: 6},
	invertsOutputs: true,
};
const processed: Profile = {
	...profile,
	bassProcessor,
	subs: profile.subs!.map((sub, index) => ({...sub, processorOutput: 'AB'[index]!})),
};

test('planSetting has no way where two subs hang on one line', () => {
	expect(planSetting(profile, set(5, 5), ['sub2'], 2, false)).toBeUndefined();
});

test('planSetting sets one sub apart at the processor', () => {
	expect(planSetting(processed, set(5, 5), ['sub2'], 2, true)).toMatchObject({
		actions: [
			{box: 'processor', about: 'B', what: 'delay', from: 0, to: 2},
			{box: 'processor', about: 'B', what: 'polarity'},
		],
	});
});

test('planSetting tells a change alone where what stands is not known', () => {
	expect(planSetting(profile, undefined, all, 1.234, false)).toEqual({
		actions: [{box: 'receiver', about: 'LFE1', what: 'delay', change: expect.closeTo(1.2, 9)}],
		addedMs: expect.closeTo(1.2, 9),
		leftMs: expect.closeTo(0.034, 9),
	});
});

test('planSetting changes nothing for less than half a step', () => {
	expect(planSetting(profile, set(5, 5), all, 0.04, false)!.actions).toEqual([]);
});

test('planSetting delays the mains when the subs are at their least', () => {
	expect(planSetting(profile, set(5, 1), all, -3, false)).toMatchObject({
		actions: [{box: 'receiver', about: 'FC', from: 5, to: 8}],
		addedMs: expect.closeTo(-3, 9),
	});
});

test('planSetting says what is left when no box reaches far enough, and reachOf how far that is', () => {
	const plan = planSetting(profile, set(28, 1), all, -9, false)!;
	expect(plan.addedMs).toBeCloseTo(-2, 9);
	expect(plan.leftMs).toBeCloseTo(-7, 9);
	expect(reachOf(profile, set(28, 1), all)).toEqual({
		lowMs: expect.closeTo(-2, 9),
		highMs: expect.closeTo(29, 9),
		stepMs: 0.1,
	});
});

test('planSetting turns the polarity where a box can, and at the sub where none can', () => {
	const at = (own: Profile) => planSetting(own, set(5, 5), all, 0, true)!.actions;
	expect(at(profile)).toEqual([
		{box: 'sub', about: 'sub1', what: 'polarity'},
		{box: 'sub', about: 'sub2', what: 'polarity'},
	]);
	expect(at({...profile, receiver: {...profile.receiver!, invertsSubs: true}})).toEqual([
		{box: 'receiver', about: 'LFE1', what: 'polarity'},
	]);
	expect(at(processed).map(({about}) => about)).toEqual(['A', 'B']);
});
