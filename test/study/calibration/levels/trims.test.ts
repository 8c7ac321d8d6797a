import {expect, test} from 'vitest';
import type {SeatLevel} from '../../../../source/study/calibration/levels/levels.ts';
import {trims} from '../../../../source/study/calibration/levels/trims.ts';
import {emptyRoom} from '../room.ts';

// The box: steps of 0.5 dB from −12 to +12 dB.
const profile = emptyRoom();
const read = (atZeroTrimDb: number, gainInForceDb = 0) =>
	({atZeroTrimDb, gainInForceDb, sigmaDb: 0.4, points: 1}) as unknown as SeatLevel;
const trimsOf = (levels: Readonly<Record<string, number>>, of = profile) =>
	trims(of, new Map(Object.entries(levels).map(([id, level]) => [id, read(level)])), new Map(), 75)!;
const stepped = (result: ReturnType<typeof trimsOf>, id: string) => result.channels.get(id)!.stepped;

test('nothing is trimmed where no level was read', () => {
	expect(trims(profile, new Map(), new Map(), 75)).toBeUndefined();
});

test('a trim is what the target lacks, on the box’s steps, and the difference of two errs by less than half a step', () => {
	const found = trimsOf({FL: 78, FR: 75.2});
	expect(found.channels.get('FL')!.exact).toBeCloseTo(-3, 9);
	expect(found.channels.get('FR')!.exact).toBeCloseTo(-0.2, 9);
	for (const id of ['FL', 'FR']) expect(Number.isInteger(stepped(found, id) / 0.5)).toBe(true);
	// Wanted 2.8 dB apart: 3.0 errs by 0.2, 2.5 by 0.3.
	expect(stepped(found, 'FR') - stepped(found, 'FL')).toBeCloseTo(3, 9);
	expect(found.worstErrorDb).toBeCloseTo(0.2, 9);
	// What is left in common, 0.1 dB, is told and not to be turned.
	expect(found).toMatchObject({fits: true, masterVolumeTurnDb: 0});
	expect(found.remarks).toMatchObject([{kind: 'note', code: 'master-volume', facts: {isHeard: false}}]);
});

test('what no trim reaches alike is the master volume’s: trims keep to the middle of their range', () => {
	const found = trimsOf({FL: 95, FR: 93.6});
	expect(found.fits).toBe(true);
	expect(stepped(found, 'FR') - stepped(found, 'FL')).toBeCloseTo(1.5, 9);
	expect(Math.abs(stepped(found, 'FL'))).toBeLessThanOrEqual(1);
	// 20 and 18.6 dB too loud, 19.3 in the middle; the rest is within a step.
	expect(Math.abs(found.masterVolumeTurnDb + 19.3)).toBeLessThanOrEqual(0.5);
	expect(found.remarks.map(({code}) => code)).toEqual(['master-volume']);
});

test('a spread beyond the range is told, with what is lost', () => {
	const found = trimsOf({FL: 90, FR: 60});
	expect(found.fits).toBe(false);
	// 30 dB apart, 24 dB of range.
	expect(stepped(found, 'FR') - stepped(found, 'FL')).toBeCloseTo(24, 9);
	expect(found.remarks[0]).toMatchObject({
		kind: 'problem',
		code: 'level-spread-does-not-fit',
		facts: {rangeDb: 24, lostDb: expect.closeTo(6, 6)},
	});
});

test('a channel that is wanted louder than the rest is trimmed so', () => {
	const target = {...profile.target, channelOffsetsDb: {FR: 2}} as NonNullable<typeof profile.target>;
	const found = trimsOf({FL: 75, FR: 75}, {...profile, target});
	expect(stepped(found, 'FR') - stepped(found, 'FL')).toBeCloseTo(2, 9);
});
