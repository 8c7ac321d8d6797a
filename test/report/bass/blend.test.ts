import {expect, test} from 'vitest';
import type {Profile} from '../../../source/profile/types.ts';
import {blendText} from '../../../source/report/bass/blend.ts';
import {cellWidth} from '../../../source/report/fitCells.ts';
import {blend} from '../../../source/study/calibration/blend/blend.ts';
import {blendInputs} from '../../afresh.ts';
import {roomProfile, type Truth, walked} from '../../study/calibration/blend/room.ts';

/** The sub is 4 ms later than the tape knows. */
const truth: Truth = {
	crossoverHertz: 80,
	mainsLimitHertz: 60,
	subLimitHertz: 25,
	arrivalMs: {FL: 8, FC: 8, FR: 8, sub1: 12},
	levelDb: () => 75,
};
const channels = Object.fromEntries(
	['FL', 'FC', 'FR'].map(id => [id, {delayMs: {stepped: 5}, crossoverHertz: 80}]),
);
const set = {
	id: 'now',
	origin: 'solved' as const,
	channels: {...channels, LFE1: {delayMs: {stepped: 5}}},
};
const tape = ['FL', 'FC', 'FR', 'sub1'].map(from => ({from, to: 'sofa', metres: 2.746}));
const empty = roomProfile(truth, {settings: [set], tape});
const boxes = {delayMs: {FL: 5, FC: 5, FR: 5, sub1: 5}};
const after = (most: number) => walked(truth, boxes, empty, {most, inForce: 'now'});
const textOf = (profile: Profile, width = 80) => blendText(profile, blend(blendInputs(profile)), width);

test('the ways, their minutes and their odds come before the first reading, and the cautions before the first tone', () => {
	const text = textOf(empty);
	expect(text).toMatch(
		/Tones at three delays \(--way tones\): 35 readings, 3 changes at a box, about \d+\s+min/,
	);
	expect(text).toMatch(/louder\s+in\s+\d+ %,\s+softer\s+in\s+\d+ %/);
	expect(text).toContain('The loudest of ten settings');
	expect(text).toMatch(/Next: 27 readings at Sofa/);
	expect(text.indexOf('louder')).toBeLessThan(text.indexOf('Next: 27'));
	expect(text.indexOf('master volume down')).toBeLessThan(text.indexOf(' 1. As it stands'));
});

test('with several answers left no setting is told, and the next reading is', () => {
	const text = textOf(after(20));
	expect(text).toContain('allow several answers');
	expect(text).toMatch(/Next: 7 readings/);
	expect(text).not.toContain('expected (±');
});

test('a setting to try is told with its gain, at these tones and this seat, and how it is verified', () => {
	const text = textOf(after(27)).replaceAll(/\s+/g, ' ');
	expect(text).toMatch(/To try, not yet verified: all subs together \d\.\d ms earlier.*\+\d\.\d dB expected/);
	expect(text).toMatch(/> Receiver, Low frequency effects 1: delay from 5\.0 ms to \d\.\d ms/);
	expect(text).toMatch(/Before, as it stands.*After, all subs/i);
	expect(text).not.toMatch(/± 0\.\d;? 95 %/);
});

test('what was verified is told with what it gained', () => {
	expect(textOf(after(35)).replaceAll(/\s+/g, ' ')).toMatch(
		/Kept: all subs together \d\.\d ms earlier.*\(\+\d\.\d dB with all fronts, \+\d\.\d dB with Front centre alone\)/,
	);
});

test.each([60, 80, 120])('blendText keeps to %i columns', width => {
	for (const count of [0, 20, 27, 35])
		for (const line of textOf(after(count), width).split('\n'))
			expect(cellWidth(line)).toBeLessThanOrEqual(width);
});
