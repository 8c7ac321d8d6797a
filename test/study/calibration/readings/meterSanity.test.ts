import {expect, test} from 'vitest';
import {remarkOnMeter} from '../../../../source/study/calibration/readings/meterSanity.ts';
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
	[7.42, 74.2],
	[742, 74.2],
	[7420, 74.2],
	[-74.2, 74.2],
	[2, undefined],
])('a level of %f dB is a slip', (levelDb, meantDb) => {
	const [found, ...more] = remarkOnMeter(withSub, level('FC', levelDb));
	expect(more).toEqual([]);
	expect(found).toMatchObject({kind: 'problem', code: 'level-impossible', about: ['FC']});
	// Through binary: 7.42 · 10 is not exactly 74.2.
	expect(found!.facts).toEqual(
		meantDb === undefined ? {levelDb} : {levelDb, meantDb: expect.closeTo(meantDb, 9)},
	);
});

test('a repeat far from the first is named with its number', () => {
	expect(remarkOnMeter(withSub, level('FR', 73))[0]).toEqual({
		kind: 'doubt',
		code: 'level-far-from-repeats',
		about: ['FR'],
		facts: {levelDb: 73, differenceDb: -2, repeats: 1},
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
		facts: {levelDb: 55, differenceDb: -19.5, others: 2},
	});
});

test('weighting and trims in force are no difference between channels', () => {
	// 50 dB A on the sub is 78.2 dB; 61 dB with −14 dB in force is 75.
	const codes = (reading: ReturnType<typeof level>) => remarkOnMeter(withSub, reading).map(({code}) => code);
	expect(codes(level('sub', 50, {weighting: 'A'}))).toEqual(['weighting-a-on-sub']);
	expect(codes(level('FC', 61, {inForce: {channels: {FC: {trimDb: {stepped: -14}}}}}))).toEqual([]);
});

test('A weighting on a sub reads low by what it takes off there', () => {
	const [found] = remarkOnMeter(withSub, level('sub', 50, {weighting: 'A'}));
	// IEC 61672-1, table 3: −39.4 dB at 31.5 Hz, −22.5 dB at 80 Hz; the usual band of a sub lies about there.
	expect(found).toMatchObject({code: 'weighting-a-on-sub', facts: {lowDb: expect.closeTo(24.3, 1)}});
});

test('a level near the background tells little or nothing', () => {
	const noisy = {...withSub, meter: [level('background', 70)]};
	expect(remarkOnMeter(noisy, level('FC', 75))[0]).toMatchObject({
		kind: 'doubt',
		code: 'level-drowned',
		facts: {levelDb: 75, aboveDb: 5, backgroundDb: 70, isLost: false},
	});
	expect(remarkOnMeter(noisy, level('FC', 72))[0]).toMatchObject({
		kind: 'problem',
		code: 'level-drowned',
		facts: {isLost: true},
	});
	expect(remarkOnMeter(noisy, level('FC', 77))).toEqual([]);
});

test('a loud background may be the signal still on; one below nothing is a slip', () => {
	expect(remarkOnMeter(withSub, level('background', 74))).toEqual([
		{kind: 'doubt', code: 'background-loud', about: [], facts: {seat: 'middle', levelDb: 74}},
	]);
	expect(remarkOnMeter(withSub, level('background', 35))).toEqual([]);
	expect(remarkOnMeter(withSub, level('background', -3))).toMatchObject([{code: 'background-impossible'}]);
});

// NIOSH publication 98-126, table 1-1: 85 dBA 8 h, 88 dBA 4 h, 91 dBA 2 h, 94 dBA 1 h, 100 dBA 15 min.
test.each([
	[85, 8],
	[88, 4],
	[91, 2],
	[94, 1],
	[100, 0.25],
])('%f dB is cautioned with %f hours a day', (levelDb, hours) => {
	const found = remarkOnMeter({...withSub, meter: []}, level('FC', levelDb));
	expect(found).toContainEqual({kind: 'note', code: 'loud', about: ['FC'], facts: {levelDb, hours}});
	expect(remarkOnMeter({...withSub, meter: []}, level('FC', 84.9))).toEqual([]);
});
