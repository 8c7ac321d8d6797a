import {expect, test} from 'vitest';
import {inputsHash} from '../../../../source/profile/ask/digest.ts';
import {recordedReadings} from '../../../../source/profile/ask/recordedReadings.ts';
import type {MeterReading, Profile, Recording} from '../../../../source/profile/types.ts';
import {proofPlan} from '../../../../source/study/calibration/proof/plan.ts';
import {meterPrompts} from '../../../../source/ui/walk/meter/meter.ts';
import {solve} from '../../../afresh.ts';
import {eveningProfile} from '../../hearing/simulated/evening.ts';

const evening = eveningProfile();
const seat = evening.seats[0]!.id;
const read = (source: string, decibels: number, inForce = 'now'): MeterReading => ({
	source,
	seat,
	decibels,
	weighting: 'Z',
	round: 'first',
	inForce,
});

/** All lines recorded as they stand: levels re the file, the LFE sweep 10 dB up as playback does it. */
const recordedDb = {FL: -30, FR: -31.5, FC: -28, LS: -33, RS: -32, LFE1: -22};
function profile(meter: readonly MeterReading[], more: Partial<Recording> = {}): Profile {
	return {
		...evening,
		meter: [...meter],
		recordings: [
			{
				id: 'r1',
				file: 'a',
				sha256: 'a',
				atSeconds: 0,
				seat,
				round: 'first',
				inForce: 'now',
				clockPpm: 0,
				...more,
			},
		],
		responses: Object.entries(recordedDb).map(([source, levelDb]) => ({
			source,
			seat,
			part: 'all',
			recording: 'r1',
			sha256: source,
			levelDb,
		})),
	};
}

const levelOf = (subject: Profile, id: string) =>
	solve(subject).channels.find(channel => channel.id === id)!.level;

test('one reading of one line gives every recorded line its level, with what the recording adds to the uncertainty', () => {
	const subject = profile([read('FL', 74)]);
	// 74 dB read where −30 was recorded: 104 dB above it for all.
	expect(levelOf(subject, 'FR')!.decibels).toBeCloseTo(72.5, 6);
	expect(levelOf(subject, 'FC')!.decibels).toBeCloseTo(76, 6);
	// The meter's 0.5 dB and 0.3 dB of either recorded level.
	expect(levelOf(subject, 'FR')!.sigmaDb).toBeCloseTo(Math.hypot(0.5, 0.3, 0.3), 2);
	expect(levelOf(subject, 'FL')!.sigmaDb).toBeLessThan(0.55);
	const remarks = solve(subject).channels.find(({id}) => id === 'FR')!.remarks;
	expect(remarks.find(({code}) => code === 'level-by-recording')).toMatchObject({facts: {against: ['FL']}});
});

test('a reading of its own stands above the recording, and two readings are both held against it', () => {
	const subject = profile([read('FL', 74), read('FR', 73.1)]);
	expect(levelOf(subject, 'FR')!.decibels).toBeCloseTo(73.1, 6);
	// 104 by the one and 104.6 by the other.
	expect(levelOf(subject, 'FC')!.decibels).toBeCloseTo(76.3, 6);
});

test('trims that changed between reading and recording are taken into account', () => {
	const louder = {...evening.settings![0]!, id: 'louder'};
	const channels = {...louder.channels, FL: {...louder.channels.FL!, trimDb: {stepped: 2}}};
	const subject = {
		...profile([read('FL', 76, 'louder')]),
		settings: [{...louder, channels}, evening.settings![0]!],
	};
	expect(levelOf(subject, 'FR')!.decibels).toBeCloseTo(72.5, 6);
});

test('nothing follows without a reading, from a playing with something changed, or from one whose settings nobody knows', () => {
	expect(recordedReadings(profile([]))).toEqual([]);
	expect(recordedReadings(profile([read('FL', 74)], {state: {turned: ['sub1']}}))).toEqual([]);
	expect(recordedReadings(profile([read('FL', 74)], {inForce: 'no such set'}))).toEqual([]);
});

test('the sub has no level by a recorder of unknown colour, and has one with its curve', () => {
	const sources = (subject: Profile) => recordedReadings(subject).map(({source}) => source);
	expect(sources(profile([read('FL', 74)]))).toEqual(['FR', 'FC', 'LS', 'RS']);
	const known = profile([read('FL', 74)], {microphone: 'curve.txt'});
	expect(sources(known)).toContain('sub1');
	// −22 − 10 + 104.
	expect(solve(known).subs[0]!.level!.decibels).toBeCloseTo(72, 6);
	// A takes half a decibel off the speakers' band, which would all be the sub's.
	const byA = profile([{...read('FL', 74), weighting: 'A'}], {microphone: 'curve.txt'});
	expect(sources(byA)).toEqual(['FR', 'FC', 'LS', 'RS']);
});

test('settings become stale by it, Meter asks only for what is left, and the proof has a row for it', () => {
	const [without, subject] = [{...evening, meter: [read('FL', 74)]}, profile([read('FL', 74)])];
	expect(inputsHash(subject)).not.toBe(inputsHash(without));
	const open = (of: Profile) =>
		meterPrompts(of).flatMap(({id, isAnswered, isRequired}) => (isRequired && !isAnswered ? [id] : []));
	expect(open(without)).toContain(`meter:FR:${seat}`);
	expect(open(subject).filter(id => /^meter:(F|[LR]S)/.test(id))).toEqual([]);
	expect(open(subject)).toContain(`meter:sub1:${seat}`);
	const asked = meterPrompts(subject).find(({id}) => id === `meter:FR:${seat}`)!;
	expect(asked.about).toContain('By the recording 72.5 dB; it need not be read.');
	expect(proofPlan(subject).map(({source}) => source.join())).toContain('FR');
});
