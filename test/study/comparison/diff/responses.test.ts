import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {changeText} from '../../../../source/report/diff/changeText.ts';
import {diffProfiles} from '../../../../source/study/comparison/diff/diffProfiles.ts';
import type {ResponseChange} from '../../../../source/study/comparison/diff/profileDiff.ts';
import {responseFrequencies} from '../../../../source/study/hearing/responses.ts';
import {arrange, usualArrangement} from './exampleRoom.ts';

const room = arrange(usualArrangement);
const frequencies = [...responseFrequencies()];

type Line = {
	readonly source: string;
	readonly levelDb: number;
	/** Depth of a dip half an octave wide at 63 Hz, dB. */
	readonly dipDb?: number;
	readonly decaySeconds?: number;
};

/** A profile whose lines were recorded at the sofa. */
function recorded(lines: readonly Line[], {microphone, date}: {microphone?: string; date: string}) {
	const profile: Profile = {
		...room.profile,
		date,
		recordings: [
			{
				id: 'r1',
				file: 'evening.wav',
				sha256: 'a',
				atSeconds: 0,
				seat: 'sofa',
				round: 'first',
				clockPpm: 0,
				...(microphone === undefined ? {} : {microphone}),
			},
		],
		responses: lines.map(({source, levelDb, dipDb = 0, decaySeconds}) => ({
			source,
			seat: 'sofa',
			recording: 'r1',
			sha256: JSON.stringify([source, levelDb, dipDb, decaySeconds]),
			levelDb,
			bassLevelDb: levelDb,
			...(decaySeconds === undefined ? {} : {decays: [{hertz: 500, rangeDb: 45, t20Seconds: decaySeconds}]}),
			points: {
				levelsDb: frequencies.map(
					hertz => levelDb - dipDb * Math.exp(-((Math.log2(hertz / 63) / 0.25) ** 2)),
				),
				phasesDegrees: frequencies.map(() => 0),
			},
		})),
	};
	return {...room, profile};
}

const before: Line[] = [
	{source: 'FL', levelDb: -20, dipDb: 12, decaySeconds: 0.4},
	{source: 'FR', levelDb: -20},
	{source: 'FC', levelDb: -21},
	{source: 'LS', levelDb: -22},
];
// The recorder stood 6 dB louder, the centre lost 3 dB, a rug came, and the dip of the left filled up by half.
const after: Line[] = [
	{source: 'FL', levelDb: -14, dipDb: 6, decaySeconds: 0.3},
	{source: 'FR', levelDb: -14},
	{source: 'FC', levelDb: -18},
	{source: 'LS', levelDb: -16},
];
const changesOf = (microphone?: string, newer = after) => {
	const options = microphone === undefined ? {} : {microphone};
	const diff = diffProfiles(
		recorded(before, {...options, date: '2025-04-01'}),
		recorded(newer, {...options, date: '2026-04-01'}),
	);
	const changes = diff.changes.filter((change): change is ResponseChange => change.kind === 'response');
	return {diff, of: (source: string) => changes.find(({about}) => about === source)};
};

test('a line is compared against what all lines share: the recorder’s gain is no change of it', () => {
	const {of} = changesOf('mine.txt');
	expect(of('FC')!.levelDb).toBeCloseTo(-3, 9);
	expect(of('FC')!.isScatter).toBe(false);
	expect(of('FR')!.levelDb).toBeCloseTo(0, 9);
	expect(of('FR')!.isScatter).toBe(true);
});

test('the dip before and after is named with its frequency, and so is the decay', () => {
	const {before: then, after: now} = changesOf('mine.txt').of('FL')!.dip!;
	// Within a step of the grid, 1/48 octave. The mean from 20 to 300 Hz lies a little below the level beside the dip.
	expect(Math.abs(Math.log2(then!.hertz / 63))).toBeLessThan(1 / 24);
	expect(Math.abs(Math.log2(now!.hertz / 63))).toBeLessThan(1 / 24);
	expect(now!.aboveDb - then!.aboveDb).toBeGreaterThan(4);
	expect(changesOf('mine.txt').of('FL')!.decaySeconds).toEqual({before: 0.4, after: 0.3});
	const said = changeText(changesOf('mine.txt').of('FL')!, 'm');
	expect(said).toMatch(/deepest dip below 300 Hz −\d+ dB at 6[234] Hz → −\d dB at 6[234] Hz/);
	expect(said).toContain('0.40 s → 0.30 s at 500 Hz');
});

test('without a microphone’s curve the bass is not compared by its level, and that is said', () => {
	const coloured = changesOf();
	expect(coloured.of('FL')).not.toHaveProperty('bassLevelDb');
	expect(coloured.of('FL')).not.toHaveProperty('mostChanged');
	expect(coloured.of('FL')).toHaveProperty('dip');
	expect(coloured.diff.remarks).toContainEqual(
		expect.objectContaining({code: 'responses-coloured', about: ['FL', 'FR', 'FC', 'LS']}),
	);
	const known = changesOf('mine.txt');
	expect(known.of('FC')!.bassLevelDb).toBeCloseTo(-3, 9);
	// Six of twelve dB came back at 63 Hz; smoothing and the mean taken off make it a little less.
	expect(known.of('FL')!.mostChanged!.hertz).toBeCloseTo(63, -1);
	expect(known.of('FL')!.mostChanged!.changeDb).toBeGreaterThan(3.5);
	expect(known.of('FL')!.mostChanged!.changeDb).toBeLessThan(6);
	expect(known.diff.remarks.map(({code}) => code)).not.toContain('responses-coloured');
});

test('of two lines none is called softer: the recorder’s gain could be either', () => {
	const {of} = changesOf('mine.txt', after.slice(0, 2));
	expect(of('FL')).not.toHaveProperty('levelDb');
	expect(of('FL')).toHaveProperty('dip');
});

test('the same recordings in both are no change, and those of one profile alone are counted', () => {
	expect(changesOf('mine.txt', before).diff.isSame).toBe(true);
	expect(changesOf('mine.txt', before.slice(1)).diff.changes).toContainEqual(
		expect.objectContaining({kind: 'only in one', readings: 'recording', side: 'older', count: 1}),
	);
});
