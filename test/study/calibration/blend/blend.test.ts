import {describe, expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {blend} from '../../../../source/study/calibration/blend/blend.ts';
import {nextBlendReadings} from '../../../../source/study/calibration/blend/procedure.ts';
import {type Boxes, normal, roomProfile, seeded, type Truth, takeReading, trueLevel} from './room.ts';

const truth: Truth = {
	crossoverHertz: 80,
	mainsLimitHertz: 80,
	subLimitHertz: 25,
	arrivalMs: {FC: 8, sub1: 14.3},
	levelDb: (id, hertz) => (id === 'FC' ? 75 : 76 + hertz / 100),
};
const standing = {
	id: 'now',
	origin: 'entered' as const,
	channels: {
		FC: {delayMs: {stepped: 10}, crossoverHertz: 80},
		LFE1: {delayMs: {stepped: 5}},
	},
};
const boxes: Boxes = {delayMs: {FC: 10, sub1: 5}};

/** Takes every step that the procedure asks for until it asks no more. */
function walkThrough(profile: Profile, room: Truth, at: Boxes, noise: () => number): Profile {
	let walked = profile;
	for (let count = 0; count < 60; count += 1) {
		const [step] = nextBlendReadings(walked);
		if (!step) return walked;
		const moved = step.pair.split('|')[1]!.split('+');
		const reading = takeReading(room, at, step, moved, noise(), walked.settings?.at(-1)?.id);
		walked = {...walked, meter: [...(walked.meter ?? []), reading]};
	}

	throw new Error('the procedure asked for more than 60 readings');
}

const silent = () => 0;

test('blend calls it a problem when no tone was read, and lists the steps', () => {
	const result = blend(roomProfile(truth));
	expect(result.pairs).toEqual([]);
	expect(result.remarks).toContainEqual(
		expect.objectContaining({kind: 'problem', code: 'blend-nothing-read'}),
	);
	expect(result.steps.length).toBe(12);
	expect(result.cautions[0]).toMatch(/master volume down/);
});

test('blend has nothing to say without a sub', () => {
	const profile = roomProfile(truth, {channels: [{id: 'FC'}], subs: []});
	expect(blend(profile).steps).toEqual([]);
});

test('blend finds the true arrival and makes both add up when the readings hold no noise', () => {
	const profile = walkThrough(roomProfile(truth, {settings: [standing]}), truth, boxes, silent);
	const [pair] = blend(profile).pairs;
	// Sub 14.3 + 5 ms, centre 8 + 10 ms: the sub arrives 1.3 ms later.
	expect(pair!.minima[0]!.arrivalMs).toBeCloseTo(1.3, 1);
	expect(pair!.minima[0]!.inverted).toBe(false);
	const action = pair!.setting!.actions[0]!;
	expect(action).toMatchObject({box: 'receiver', about: 'LFE1', what: 'delay', from: 5});
	const after: Boxes = {delayMs: {FC: 10, sub1: action.to!}};
	// Filter and box of the centre make a Linkwitz-Riley high-pass: in phase they reach the sum of their amplitudes.
	const alone = [trueLevel(truth, after, ['FC'], 80), trueLevel(truth, after, ['sub1'], 80)];
	const inPhase = 20 * Math.log10(10 ** (alone[0]! / 20) + 10 ** (alone[1]! / 20));
	expect(trueLevel(truth, after, ['FC', 'sub1'], 80)).toBeGreaterThan(inPhase - 0.1);
});

test('blend predicts the confirming readings that the room then gives', () => {
	const profile = walkThrough(roomProfile(truth, {settings: [standing]}), truth, boxes, silent);
	const [pair] = blend(profile).pairs;
	const after: Boxes = {delayMs: {FC: 10, sub1: pair!.setting!.actions[0]!.to!}};
	expect(pair!.confirm.map(({hertz}) => hertz)).toEqual([64, 80, 100]);
	for (const {hertz, predictedDb} of pair!.confirm) {
		expect(predictedDb.value).toBeCloseTo(trueLevel(truth, after, ['FC', 'sub1'], hertz), 1);
	}

	expect(pair!.expected!.thenDb).toBeGreaterThan(pair!.expected!.nowDb);
});

test('blend turns a sub that stands in the wrong polarity, at the box that can', () => {
	const wrong: Truth = {...truth, invertedAtBox: ['sub1']};
	const {receiver} = roomProfile(wrong);
	const settings = [standing];
	const turned = (change: Partial<Profile>) =>
		blend(walkThrough(roomProfile(wrong, {settings, ...change}), wrong, boxes, silent)).pairs[0]!;
	const bySwitch = turned({});
	expect(bySwitch.minima[0]!.inverted).toBe(true);
	expect(bySwitch.setting!.actions).toContainEqual({box: 'sub', about: 'sub1', what: 'polarity'});
	expect(bySwitch.remarks.map(({code}) => code)).toContain('polarity-at-sub');
	const byReceiver = turned({receiver: {...receiver!, invertsSubs: true}});
	expect(byReceiver.setting!.actions).toContainEqual({box: 'receiver', about: 'LFE1', what: 'polarity'});
});

test('blend gives distances in whole steps to a receiver that takes distances', () => {
	const {receiver} = roomProfile(truth);
	const timing = {
		kind: 'distance',
		shownIn: 'm',
		stepMetres: 0.03,
		minimumMetres: 0,
		maximumMetres: 18,
		speedOfSoundMetresPerSecond: 340,
	} as const;
	// The same delays: a distance is a delay of −d/c, so 3.4 m and 5.1 m differ by 5 ms.
	const settings = [
		{
			...standing,
			channels: {
				FC: {distanceMetres: {stepped: 3.42}, crossoverHertz: 80},
				LFE1: {distanceMetres: {stepped: 5.1}},
			},
		},
	];
	const at: Boxes = {delayMs: {FC: -3420 / 340, sub1: -15}};
	const profile = roomProfile(truth, {settings, receiver: {...receiver!, timing}});
	const [pair] = blend(walkThrough(profile, truth, at, silent)).pairs;
	const action = pair!.setting!.actions[0]!;
	expect(action).toMatchObject({box: 'receiver', about: 'LFE1', what: 'distance', from: 5.1});
	expect(action.to! / 0.03).toBeCloseTo(Math.round(action.to! / 0.03), 6);
	// A millisecond later is 0.34 m nearer on the screen.
	expect(action.change!).toBeCloseTo(-0.34 * pair!.setting!.addedMs, 9);
});

test('blend delays the mains where the sub cannot come earlier', () => {
	const late: Truth = {...truth, arrivalMs: {FC: 8, sub1: 17}};
	const settings = [
		{...standing, channels: {FC: {delayMs: {stepped: 2}, crossoverHertz: 80}, LFE1: {delayMs: {stepped: 0}}}},
	];
	const at: Boxes = {delayMs: {FC: 2, sub1: 0}};
	const [pair] = blend(walkThrough(roomProfile(late, {settings}), late, at, silent)).pairs;
	expect(pair!.setting!.actions).toEqual([
		expect.objectContaining({box: 'receiver', about: 'FC', what: 'delay', from: 2}),
	]);
	expect(pair!.setting!.actions[0]!.to).toBeGreaterThan(5);
	expect(Math.abs(pair!.setting!.leftMs)).toBeLessThan(0.06);
});

test('blend takes readings under two sets of settings together, by the difference of their delays', () => {
	const second = {...standing, id: 'later', channels: {...standing.channels, LFE1: {delayMs: {stepped: 8}}}};
	const first = walkThrough(roomProfile(truth, {settings: [standing]}), truth, boxes, silent);
	// Only readings without any delay added on purpose; the second set is what moves the delay.
	const plain = first.meter!.filter(({addedDelayMs}) => addedDelayMs === 0);
	const moved = [64, 80, 100].map(hertz =>
		takeReading(
			truth,
			{delayMs: {FC: 10, sub1: 8}},
			{source: ['FC', 'sub1'], hertz, addedDelayMs: 0, seat: 'sofa'},
			[],
			0,
			'later',
		),
	);
	const profile = {...first, settings: [standing, second], meter: [...plain, ...moved]};
	const [pair] = blend(profile).pairs;
	// On top of the latest set: 14.3 + 8 − 18.
	expect(pair!.minima[0]!.arrivalMs).toBeCloseTo(4.3, 1);
	expect(pair!.setting!.actions[0]!.from).toBe(8);
});

test('blend names a level of both that no phase can make, with its likely causes, and leaves it out', () => {
	const profile = walkThrough(roomProfile(truth, {settings: [standing]}), truth, boxes, silent);
	const index = profile.meter!.findIndex(
		({source, signal, addedDelayMs}) =>
			Array.isArray(source) && signal?.kind === 'tone' && signal.hertz === 80 && addedDelayMs === 0,
	);
	const spoiled = (decibels: number) =>
		blend({
			...profile,
			meter: profile.meter!.map((reading, at) => (at === index ? {...reading, decibels} : reading)),
		}).pairs[0]!;
	const loud = spoiled(90);
	expect(loud.remarks).toContainEqual(
		expect.objectContaining({
			kind: 'problem',
			code: 'levels-too-loud',
			text: expect.stringMatching(/another sound/),
		}),
	);
	expect(loud.minima[0]!.arrivalMs).toBeCloseTo(1.3, 1);
});

test('blend calls both together too quiet when one side is far louder alone, as with a limiter', () => {
	const quiet: Truth = {...truth, levelDb: id => (id === 'FC' ? 70 : 78)};
	const profile = walkThrough(roomProfile(quiet, {settings: [standing]}), quiet, boxes, silent);
	const meter = profile.meter!.map(reading =>
		Array.isArray(reading.source) && reading.signal?.kind === 'tone' && reading.signal.hertz === 80
			? {...reading, decibels: 55}
			: reading,
	);
	expect(blend({...profile, meter}).pairs[0]!.remarks).toContainEqual(
		expect.objectContaining({
			code: 'levels-too-quiet',
			text: expect.stringMatching(/limiter or compression/),
		}),
	);
});

test('blend leaves out a tone at which the levels are more than 15 dB apart', () => {
	const apart: Truth = {...truth, levelDb: (id, hertz) => (id === 'FC' && hertz === 64 ? 55 : 76)};
	const [pair] = blend(walkThrough(roomProfile(apart, {settings: [standing]}), apart, boxes, silent)).pairs;
	expect(pair!.tones.map(({seen}) => seen)).toEqual([false, true, true]);
	expect(pair!.remarks.map(({code}) => code)).toContain('phase-not-seen');
	expect(pair!.confirm.map(({hertz}) => hertz)).toEqual([80, 100]);
});

describe('blend with two subs behind a processor', () => {
	const two: Truth = {
		...truth,
		arrivalMs: {FC: 8, sub1: 14.3, sub2: 19.1},
		levelDb: id => (id === 'FC' ? 75 : id === 'sub1' ? 76 : 74),
	};
	const processor: Partial<Profile> = {
		bassProcessor: {
			latencyMs: 4,
			outputs: ['A', 'B'],
			delay: {stepMs: 0.05, minimumMs: 0, maximumMs: 20},
			gain: {stepDb: 0.5, minimumDb: -20, maximumDb: 6},
			invertsOutputs: true,
		},
		subs: [
			{id: 'sub1', name: 'Sub 1', fedBy: 'LFE1', processorOutput: 'A', lowLimitHertz: 25, box: 'closed'},
			{id: 'sub2', name: 'Sub 2', fedBy: 'LFE1', processorOutput: 'B', lowLimitHertz: 25, box: 'closed'},
		],
		settings: [{...standing, outputs: {A: {delayMs: {stepped: 0}}, B: {delayMs: {stepped: 0}}}}],
	};

	test('matches the subs to each other at the processor, then all of them to the centre at the receiver', () => {
		const at: Boxes = {delayMs: {FC: 10, sub1: 5, sub2: 5}};
		const result = blend(walkThrough(roomProfile(two, processor), two, at, silent));
		expect(result.pairs.map(({id}) => id)).toEqual(['sub1|sub2', 'FC|sub1+sub2']);
		const [subs] = result.pairs;
		expect(subs!.minima[0]!.arrivalMs).toBeCloseTo(4.8, 1);
		// The second cannot come earlier than its output's 0 ms, so the first is delayed instead.
		expect(subs!.setting!.actions).toEqual([
			expect.objectContaining({box: 'processor', about: 'A', what: 'delay', from: 0}),
		]);
		expect(subs!.setting!.actions[0]!.to).toBeCloseTo(4.8, 1);
		expect(subs!.remarks.map(({code}) => code)).toContain('latency-included');
	});

	test('sets the subs together at the receiver once they are matched', () => {
		const settings = [{...standing, outputs: {A: {delayMs: {stepped: 4.8}}, B: {delayMs: {stepped: 0}}}}];
		const at: Boxes = {delayMs: {FC: 10, sub1: 9.8, sub2: 5}};
		const profile = roomProfile(two, {...processor, settings});
		const [subs, mains] = blend(walkThrough(profile, two, at, silent)).pairs;
		expect(subs!.remarks.map(({code}) => code)).toContain('blend-stands');
		// Both arrive at 24.1 ms, the centre at 18 ms; the receiver can take off 5 ms at most, so the mains move.
		expect(mains!.minima[0]!.arrivalMs).toBeCloseTo(6.1, 1);
		expect(mains!.setting!.actions).toEqual([
			expect.objectContaining({box: 'receiver', about: 'FC', what: 'delay', from: 10}),
		]);
	});
});

test('blend stays near the truth with a meter of 0.3 dB', () => {
	const noise = normal(seeded(4711));
	const profile = walkThrough(roomProfile(truth, {settings: [standing]}), truth, boxes, () => 0.3 * noise());
	const [pair] = blend(profile).pairs;
	const answer = pair!.minima.find(({inverted}) => !inverted)!;
	expect(answer.fromMs).toBeLessThan(1.3);
	expect(answer.toMs).toBeGreaterThan(1.3);
	expect(answer.sigmaMs).toBeLessThan(0.5);
});

test('blend gives one setting of the subs to all groups of mains that were read', () => {
	const both: Truth = {...truth, arrivalMs: {FC: 8, FL: 8.4, sub1: 14.3}};
	const profile = roomProfile(both, {
		channels: [
			{id: 'FC', speaker: {lowLimitHertz: 80, box: 'closed'}},
			{id: 'FL', speaker: {lowLimitHertz: 80, box: 'closed'}},
			{id: 'LFE1'},
		],
		settings: [
			{
				...standing,
				channels: {...standing.channels, FL: {delayMs: {stepped: 10}, crossoverHertz: 80}},
			},
		],
	});
	const at: Boxes = {delayMs: {FC: 10, FL: 10, sub1: 5}};
	const walked = walkThrough(profile, both, at, silent);
	// The same steps with the front left speaker in place of the centre.
	const meter = walked.meter!.flatMap(reading => {
		const ids = [reading.source].flat();
		if (!ids.includes('FC') || reading.signal?.kind !== 'tone') return [];
		const source = ids.map(id => (id === 'FC' ? 'FL' : id));
		const step = {source, hertz: reading.signal.hertz, addedDelayMs: reading.addedDelayMs ?? 0, seat: 'sofa'};
		return [takeReading(both, at, step, ['sub1'], 0, 'now')];
	});
	const {pairs} = blend({...walked, meter: [...walked.meter!, ...meter]});
	expect(pairs.map(({id}) => id)).toEqual(['FC|sub1', 'FL|sub1']);
	expect(pairs[0]!.minima[0]!.arrivalMs).toBeCloseTo(1.3, 1);
	expect(pairs[1]!.minima[0]!.arrivalMs).toBeCloseTo(0.9, 1);
	expect(pairs[0]!.setting).toEqual(pairs[1]!.setting);
	// Between what each alone would want.
	const alone = (id: string) =>
		blend({
			...walked,
			meter:
				id === 'FC' ? walked.meter! : [...walked.meter!.filter(({source}) => source === 'sub1'), ...meter],
		}).pairs.find(pair => pair.still[0] === id)!.alignment!.addedMs;
	const together = pairs[0]!.alignment!.addedMs;
	expect(together).toBeGreaterThan(alone('FC'));
	expect(together).toBeLessThan(alone('FL'));
});

test('blend sets two subs on two receiver lines apart at the receiver', () => {
	const two: Truth = {...truth, arrivalMs: {FC: 8, sub1: 14.3, sub2: 12.1}};
	const profile = roomProfile(two, {
		channels: [{id: 'FC', speaker: {lowLimitHertz: 80, box: 'closed'}}, {id: 'LFE1'}, {id: 'LFE2'}],
		subs: [
			{id: 'sub1', name: 'Sub 1', fedBy: 'LFE1', lowLimitHertz: 25, box: 'closed'},
			{id: 'sub2', name: 'Sub 2', fedBy: 'LFE2', lowLimitHertz: 25, box: 'closed'},
		],
		settings: [{...standing, channels: {...standing.channels, LFE2: {delayMs: {stepped: 5}}}}],
	});
	const at: Boxes = {delayMs: {FC: 10, sub1: 5, sub2: 5}};
	const [subs] = blend(walkThrough(profile, two, at, silent)).pairs;
	expect(subs!.setting!.actions).toEqual([
		expect.objectContaining({box: 'receiver', about: 'LFE2', what: 'delay', from: 5, to: 7.2}),
	]);
});
