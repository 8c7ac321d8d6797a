import {expect, test} from 'vitest';
import {layouts} from '../../../source/profile/generic/layouts.ts';
import type {Profile} from '../../../source/profile/types.ts';
import {planSignals} from '../../../source/study/playing/plan.ts';

const profile: Profile = {
	format: 1,
	name: 'Invented room',
	date: '2026-04-18',
	room: {name: 'Invented room'},
	seats: [{id: 'sofa', name: 'Sofa', reference: true}],
	channels: [{id: 'FC'}, {id: 'FL'}, {id: 'FR'}, {id: 'TpSiL'}, {id: 'LFE1'}],
	subs: [{id: 'sub1', name: 'Sub', fedBy: 'LFE1'}],
	settings: [{id: 'now', origin: 'entered', channels: {FC: {crossoverHertz: 100}}}],
};

test('planSignals without a profile plans mono files about 80 Hz', () => {
	const {files, order, cautions} = planSignals(undefined, -20);
	expect(files.map(({file}) => file)).toEqual([
		'left-noise.wav',
		'right-noise.wav',
		'speaker-noise.wav',
		'sub-noise.wav',
		'tone-64-hz.wav',
		'tone-80-hz.wav',
		'tone-100-hz.wav',
	]);
	expect(order).toBeUndefined();
	expect(cautions[0]).toMatch(/master volume down before the first/);
});

const crossed = (hertz: number): Profile => ({
	...profile,
	settings: [
		{
			id: 'now',
			origin: 'entered',
			channels: {
				FL: {crossoverHertz: hertz},
				FC: {crossoverHertz: hertz},
				FR: {crossoverHertz: hertz},
			},
		},
	],
});

test('planSignals puts tones about the crossover that is set into each front speaker', () => {
	const {files} = planSignals(crossed(100), -30);
	const rows = files.filter(({row}) => row);
	expect(rows.map(({file}) => file)).toEqual(['left-tones.wav', 'layout-tones-FC.wav', 'right-tones.wav']);
	for (const {row} of rows) expect(row).toEqual([80, 100, 125]);
});

test('planSignals writes left alone and right alone in two channels, first of all', () => {
	for (const of of [undefined, profile]) {
		const [left, right] = planSignals(of, -30).files;
		expect(left).toMatchObject({
			file: 'left-noise.wav',
			channel: 'FL',
			order: {channels: ['FL', 'FR'], mask: 3},
		});
		expect(right).toMatchObject({
			file: 'right-noise.wav',
			channel: 'FR',
			order: {channels: ['FL', 'FR'], mask: 3},
		});
	}
});

test('planSignals puts no more than eight channels into a file, those at ear height first', () => {
	const channels = layouts['7.1.4'].map(id => ({id}));
	const {order, files} = planSignals({...profile, channels}, -30);
	expect(order!.channels).toEqual(['FL', 'FR', 'FC', 'LFE1', 'BL', 'BR', 'SiL', 'SiR']);
	expect(files.filter(({channel}) => channel?.startsWith('Tp'))).toEqual([]);
});

test('planSignals plans noise an octave about the crossover, of the centre and of all fronts at once', () => {
	const verifying = planSignals(crossed(100), -30).files.filter(({file}) => file.includes('blend-noise'));
	expect(verifying.map(({file}) => file)).toEqual([
		'layout-blend-noise-FC.wav',
		'layout-blend-noise-fronts.wav',
	]);
	expect(verifying[1]).toMatchObject({
		together: ['FL', 'FC', 'FR'],
		spectrum: {fromHertz: 50, toHertz: 200},
	});
});

test('planSignals plans no tone that a file cannot hold', () => {
	const {files} = planSignals(crossed(100_000), -30);
	expect(files.filter(({what}) => what === 'tone' || what === 'row')).toEqual([]);
});

test('planSignals plans noise for each channel in the order of the file, LFE 10 dB lower and in the sub band', () => {
	const {files, order} = planSignals(profile, -30);
	expect(order).toMatchObject({
		channels: ['FL', 'FR', 'FC', 'LFE1', 'TpSiL'],
		mask: 0xf,
		unplaced: ['TpSiL'],
	});
	const noise = files.filter(({file}) => file.startsWith('layout-noise'));
	expect(noise.map(({file}) => file)).toEqual([
		'layout-noise-01-FL.wav',
		'layout-noise-02-FR.wav',
		'layout-noise-03-FC.wav',
		'layout-noise-04-LFE1.wav',
		'layout-noise-05-TpSiL.wav',
	]);
	expect(noise[3]).toMatchObject({levelDbfs: -40, spectrum: {fromHertz: 28.2, toHertz: 112.2}});
});

// Level correction of C and A for pink 28.2–112.2 Hz: −1.23 and −24.3 dB (IEC 61672-1 curve over the band).
test('planSignals tells what weighted meters make of each file', () => {
	const sub = planSignals(undefined, -20).files.find(({file}) => file === 'sub-noise.wav')!;
	expect(sub.reads!.C).toBeCloseTo(-1.23, 2);
	expect(sub.reads!.A).toBeCloseTo(-24.33, 2);
});
