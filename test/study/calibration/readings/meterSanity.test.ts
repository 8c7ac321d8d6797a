import {expect, test} from 'vitest';
import {remarkOnMeter} from '../../../../source/study/calibration/readings/sanity.ts';
import {emptyRoom, level} from '../room.ts';

const withSub = emptyRoom({
	channels: [{id: 'FL'}, {id: 'FR'}, {id: 'FC'}, {id: 'LFE1'}],
	subs: [{id: 'sub', name: 'Sub', fedBy: 'LFE1'}],
	meter: [level('FL', 74), level('FR', 75)],
});

test('a likely level gets no remark', () => {
	expect(remarkOnMeter(withSub, level('FC', 76, {weighting: 'C'}))).toEqual([]);
});

test.each([
	[7.42, 'Front centre: 7.42 dB? You mean 74.2 dB?'],
	[742, 'Front centre: 742 dB? You mean 74.2 dB?'],
	[7420, 'Front centre: 7420 dB? You mean 74.2 dB?'],
	[-74.2, 'Front centre: −74.2 dB? You mean 74.2 dB?'],
	[2, 'Front centre: 2 dB cannot be the level of a test signal. Read the meter again.'],
])('a level of %f dB is a slip', (decibels, text) => {
	const remarks = remarkOnMeter(withSub, level('FC', decibels));
	expect(remarks).toEqual([{kind: 'problem', code: 'level-impossible', about: 'FC', text}]);
});

test('a repeat far from the first is named with its number', () => {
	expect(remarkOnMeter(withSub, level('FR', 73))[0]).toMatchObject({
		code: 'level-far-from-repeats',
		text: 'Front right: 73.0 dB, 2.0 dB below its repeat. Take it once more with the meter on a stand.',
	});
});

test('the reading itself, already in the profile, is not its own repeat', () => {
	const reading = level('FC', 90);
	const profile = {...withSub, meter: [...withSub.meter!, reading]};
	expect(remarkOnMeter(profile, reading).map(({code}) => code)).toEqual(['level-far-from-others', 'loud']);
});

test('a channel far from all others may have the signal on another', () => {
	expect(remarkOnMeter(withSub, level('FC', 55))[0]).toMatchObject({
		code: 'level-far-from-others',
		text: 'Front centre: 55.0 dB, 20 dB below the other channels. Is the signal on this channel, and at the same master volume? If so, keep it.',
	});
});

test('weighting and trims in force are no difference between channels', () => {
	// 50 dB A on the sub is 78.2 dB; 61 dB with −14 dB in force is 75.
	const codes = (reading: ReturnType<typeof level>) => remarkOnMeter(withSub, reading).map(({code}) => code);
	expect(codes(level('sub', 50, {weighting: 'A'}))).toEqual(['weighting-a-on-sub']);
	expect(codes(level('FC', 61, {inForce: {channels: {FC: {trimDb: {stepped: -14}}}}}))).toEqual([]);
});

test('A weighting on a sub: switch the meter', () => {
	expect(remarkOnMeter(withSub, level('sub', 50, {weighting: 'A'}))[0]!.text).toBe(
		'Sub: with A weighting the meter reads the sub 24.3 dB low and mostly hears something else. Switch the meter to C and read again.',
	);
});

test('a level near the background tells little or nothing', () => {
	const noisy = {...withSub, meter: [level('background', 70)]};
	expect(remarkOnMeter(noisy, level('FC', 75))[0]).toMatchObject({kind: 'doubt', code: 'background-near'});
	expect(remarkOnMeter(noisy, level('FC', 72))[0]).toMatchObject({kind: 'problem', code: 'background-near'});
	expect(remarkOnMeter(noisy, level('FC', 77))).toEqual([]);
});

test('a loud background may be the signal still on', () => {
	expect(remarkOnMeter(withSub, level('background', 74))[0]).toMatchObject({code: 'background-loud'});
	expect(remarkOnMeter(withSub, level('background', 35))).toEqual([]);
});

// NIOSH publication 98-126, table 1-1: 85 dBA 8 h, 88 dBA 4 h, 91 dBA 2 h, 94 dBA 1 h, 100 dBA 15 min.
test.each([
	[85, '8 hours'],
	[88, '4 hours'],
	[91, '2.0 hours'],
	[94, '1.0 hours'],
	[100, '15 minutes'],
])('%f dB is cautioned with %s a day', (decibels, time) => {
	const loud = remarkOnMeter({...withSub, meter: []}, level('FC', decibels));
	expect(loud.find(({code}) => code === 'loud')!.text).toContain(`for about ${time} a day`);
});
