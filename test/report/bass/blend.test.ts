import {expect, test} from 'vitest';
import {blendText} from '../../../source/report/bass/blend.ts';
import {cellWidth} from '../../../source/report/fitCells.ts';
import {blend} from '../../../source/study/calibration/blend/blend.ts';
import {blendCurves} from '../../../source/study/calibration/blend/curves.ts';
import {roomProfile, type Truth, takeReading} from '../../study/calibration/blend/room.ts';

const truth: Truth = {
	crossoverHertz: 80,
	mainsLimitHertz: 80,
	subLimitHertz: 25,
	arrivalMs: {FC: 8, sub1: 12},
	levelDb: () => 75,
};
const set = {
	id: 'now',
	origin: 'entered' as const,
	channels: {FC: {delayMs: {stepped: 5}, crossoverHertz: 80}, LFE1: {delayMs: {stepped: 5}}},
};
const empty = roomProfile(truth, {settings: [set]});
const read = {
	...empty,
	meter: blend(empty).steps.map(step =>
		takeReading(truth, {delayMs: {FC: 5, sub1: 5}}, step, ['sub1'], 0, 'now'),
	),
};

const textOf = (profile: typeof read, width: number) => {
	const result = blend(profile);
	const curves = new Map(
		result.pairs.flatMap(pair => {
			const found = blendCurves(profile, pair);
			return found ? [[pair.id, found] as const] : [];
		}),
	);
	return blendText(profile, result, {width, curves});
};

test('blendText lists what to read next and the cautions before the first tone when nothing was read', () => {
	const text = textOf({...empty, meter: []}, 80);
	expect(text).toMatch(/Next: 12 readings at Sofa/);
	expect(text.indexOf('master volume down')).toBeLessThan(text.indexOf(' 1. Only'));
	expect(text).toMatch(/64 Hz, 80 Hz, 100 Hz/);
});

test('blendText tells the answer, the change to make, the gain and the confirming readings', () => {
	const text = textOf(read, 80);
	expect(text).toMatch(/Sub 1 4\.0 ms late \(± 0\.\d; 95 %: .*in the same polarity/s);
	expect(text).toMatch(/Receiver, Low frequency effects 1: delay from 5\.0 ms to 1\.\d ms/);
	expect(text).toMatch(/Both together at 80 Hz: \d+\.\d dB now, \d+\.\d dB then \(\+/);
	expect(text).toMatch(/To confirm, read both with it set: 64 Hz/);
});

test.each([60, 80, 120])('blendText keeps to %i columns', width => {
	for (const line of textOf(read, width).split('\n').slice(1))
		expect(cellWidth(line)).toBeLessThanOrEqual(width);
});
