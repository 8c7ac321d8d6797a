import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {nextBlendReadings} from '../../../../source/study/calibration/blend/procedure.ts';
import {withBlend} from '../../../../source/study/calibration/blend/withBlend.ts';
import type {Solution} from '../../../../source/study/calibration/result.ts';
import {exampleSolution} from '../../../report/exampleSolution.ts';
import {type Boxes, roomProfile, type Truth, takeReading, trueLevel} from './room.ts';

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
	channels: {FC: {delayMs: {stepped: 10}, crossoverHertz: 80}, LFE1: {delayMs: {stepped: 5}}},
};
const boxes: Boxes = {delayMs: {FC: 10, sub1: 5}};

function walked(room: Truth, start: Profile): Profile {
	let profile = start;
	for (let count = 0; count < 60; count++) {
		const [step] = nextBlendReadings(profile);
		if (!step) break;
		const reading = takeReading(room, boxes, step, ['sub1'], 0, standing.id);
		profile = {...profile, meter: [...(profile.meter ?? []), reading]};
	}

	return profile;
}

const delays = (main: number, sub: number): Solution => {
	const dialled = (delayMs: number) =>
		({kind: 'delay', exact: delayMs, stepped: delayMs, sigma: 0.02}) as const;
	return exampleSolution({
		channels: [
			{id: 'FC', timing: dialled(main), crossoverHertz: 80, remarks: []},
			{id: 'LFE1', timing: dialled(sub), remarks: []},
		],
		subs: [],
		outputs: [],
	});
};

const start = roomProfile(truth, {settings: [standing]});

test('withBlend gives the solution itself when no tone was read', () => {
	const solution = delays(12, 8);
	expect(withBlend(start, solution)).toBe(solution);
});

test('withBlend leaves the solution when the readings do not say which settings stood', () => {
	const profile = walked(truth, start);
	const meter = profile.meter!.map(({inForce, ...reading}) => reading);
	const solution = delays(12, 8);
	expect(withBlend({...profile, meter}, solution).channels).toEqual(solution.channels);
});

test('withBlend makes both add up at the crossover whatever delays the distances gave', () => {
	const profile = walked(truth, start);
	for (const [main, sub] of [
		[12, 8],
		[7, 1.4],
		[9, 9],
	] as const) {
		const [centre, lfe] = withBlend(profile, delays(main, sub)).channels;
		const after: Boxes = {delayMs: {FC: centre!.timing!.stepped, sub1: lfe!.timing!.stepped}};
		const inPhase =
			20 *
			Math.log10(
				10 ** (trueLevel(truth, after, ['FC'], 80) / 20) + 10 ** (trueLevel(truth, after, ['sub1'], 80) / 20),
			);
		// The truth is known to the receiver's step of 0.1 ms, 3 degrees at 80 Hz.
		expect(trueLevel(truth, after, ['FC', 'sub1'], 80), `${main} ${sub}`).toBeGreaterThan(inPhase - 0.1);
	}
});

test('withBlend keeps to the steps of the receiver and tells why in a remark', () => {
	const [, lfe] = withBlend(walked(truth, start), delays(12, 8)).channels;
	expect((lfe!.timing!.stepped * 10) % 1).toBeCloseTo(0, 6);
	expect(Math.abs(lfe!.timing!.exact - lfe!.timing!.stepped)).toBeLessThan(0.06);
	expect(lfe!.remarks).toContainEqual(expect.objectContaining({kind: 'note', code: 'blended'}));
});

test('withBlend turns the polarity where the sub is wired the other way round', () => {
	const turned: Truth = {...truth, invertedAtBox: ['sub1']};
	const {receiver, ...rest} = roomProfile(turned, {settings: [standing]});
	const inverts = walked(turned, {...rest, receiver: {...receiver!, invertsSubs: true}});
	const [, lfe] = withBlend(inverts, delays(12, 8)).channels;
	expect(lfe!.polarityInverted).toBe(true);
	const plain = walked(turned, {...rest, receiver: receiver!});
	const blended = withBlend(plain, delays(12, 8));
	expect(blended.channels[1]!.polarityInverted).toBeUndefined();
	expect(blended.remarks).toContainEqual(expect.objectContaining({code: 'polarity-at-sub', about: 'sub1'}));
});
