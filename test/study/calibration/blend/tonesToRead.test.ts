import {expect, test} from 'vitest';
import type {MeterReading} from '../../../../source/profile/types.ts';
import {plannedPairs} from '../../../../source/study/calibration/blend/steps.ts';
import {tonesToRead} from '../../../../source/study/calibration/blend/tonesToRead.ts';
import {roomProfile} from './room.ts';

const profile = roomProfile({
	crossoverHertz: 80,
	mainsLimitHertz: 80,
	subLimitHertz: 25,
	arrivalMs: {FC: 8, sub1: 12},
	levelDb: () => 75,
});
const [pair] = plannedPairs(profile);
const tone = (hertz: number, source = 'FC', change: Partial<MeterReading> = {}): MeterReading => ({
	source,
	seat: 'sofa',
	decibels: 75,
	weighting: 'C',
	signal: {kind: 'tone', hertz},
	round: 'first',
	...change,
});
const tonesWith = (meter: MeterReading[]) => tonesToRead({...profile, meter}, pair!, 80);

test('tonesToRead are those about the crossover when nothing was read', () => {
	expect(tonesWith([])).toEqual([64, 80, 100]);
});

test('tonesToRead keep to a tone close by that readings were begun with', () => {
	expect(tonesWith([tone(60), tone(60, 'sub1'), tone(66)])).toEqual([60, 80, 100]);
});

test('tonesToRead prefer the very tone where both were read, and leave far ones alone', () => {
	expect(tonesWith([tone(60), tone(60, 'sub1'), tone(64)])).toEqual([64, 80, 100]);
	expect(tonesWith([tone(50), tone(71)])).toEqual([64, 80, 100]);
});

test('tonesToRead do not look at other seats, other speakers, or readings set aside', () => {
	expect(
		tonesWith([tone(60, 'FC', {setAside: true}), tone(60, 'FC', {seat: 'back'}), tone(60, 'FL')]),
	).toEqual([64, 80, 100]);
});
