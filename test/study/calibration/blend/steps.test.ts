import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {
	blendCautions,
	blendTones,
	pairSteps,
	plannedPairs,
} from '../../../../source/study/calibration/blend/steps.ts';
import {roomProfile} from './room.ts';

const truth = {
	crossoverHertz: 80,
	mainsLimitHertz: 80,
	subLimitHertz: 25,
	arrivalMs: {FC: 8, sub1: 12, sub2: 14},
	levelDb: () => 75,
};
const profile = roomProfile(truth);

test('blendTones stand a third of an octave apart about the crossover, in whole hertz', () => {
	expect(blendTones(80)).toEqual([64, 80, 100]);
	expect(blendTones(60)).toEqual([48, 60, 75]);
});

test('plannedPairs match the subs first, then all of them with the centre, or the front pair without one', () => {
	const {channels: _, ...rest} = profile;
	const named = (channels: Profile['channels']) =>
		plannedPairs({...rest, channels}).map(({still, moved}) => `${still.join('+')}|${moved.join('+')}`);
	expect(named([{id: 'FL'}, {id: 'FC'}, {id: 'LFE1'}])).toEqual(['sub1|sub2', 'FC|sub1+sub2']);
	expect(named([{id: 'FL'}, {id: 'FR'}, {id: 'LFE1'}])).toEqual(['sub1|sub2', 'FL+FR|sub1+sub2']);
	expect(named([{id: 'LFE1'}])).toEqual(['sub1|sub2']);
	expect(plannedPairs({...rest, subs: [], channels: [{id: 'FC'}]})).toEqual([]);
});

test('pairSteps change plugs only between blocks and say what to switch off', () => {
	const [, mains] = plannedPairs(profile);
	const steps = pairSteps(profile, mains!, blendTones(80), 3);
	expect(steps.map(({part}) => part)).toEqual([
		...['still', 'still', 'still'],
		...['moved', 'moved', 'moved'],
		...['both', 'both', 'both'],
		...['both later', 'both later', 'both later'],
	]);
	expect(new Set(steps.map(({prepare}) => prepare)).size).toBe(4);
	expect(steps[0]!.prepare).toMatch(/Switch off Sub 1 and Sub 2/);
	expect(steps[3]!.prepare).toMatch(/Receiver off, unplug/);
	expect(steps[3]!.playInto).toBe('FC');
	expect(steps[6]!.source).toEqual(['FC', 'sub1', 'sub2']);
	expect(new Set(steps.map(({id}) => id)).size).toBe(12);
});

test('pairSteps leave the delayed block out where nothing can delay', () => {
	expect(pairSteps(profile, plannedPairs(profile)[0]!, blendTones(60), 0).length).toBe(9);
});

test('pairSteps count a reading taken, and not one taken with another crossover', () => {
	const mains = plannedPairs(profile)[1]!;
	const reading = {
		source: 'FC',
		seat: 'sofa',
		decibels: 74,
		weighting: 'C',
		signal: {kind: 'tone', hertz: 80},
		round: 'first',
		inForce: 'old',
	} as const;
	const set = (crossoverHertz: number) => ({channels: {FC: {crossoverHertz}}});
	const read = {...profile, meter: [reading], settings: [{id: 'old', origin: 'found' as const, ...set(80)}]};
	const taken = (standing: ReturnType<typeof set>) =>
		pairSteps(read, mains, blendTones(80), 3, standing)
			.filter(step => step.taken > 0)
			.map(({id}) => id);
	expect(taken(set(80))).toEqual(['FC|sub1+sub2 still 80']);
	expect(taken(set(100))).toEqual([]);
});

test('blendCautions speak of level, cones, plugs and ears', () => {
	const all = blendCautions.join(' ');
	for (const word of ['master volume down', 'cones', 'Switch the receiver off', 'protection'])
		expect(all).toContain(word);
});
