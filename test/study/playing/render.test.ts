import {expect, test} from 'vitest';
import type {Profile} from '../../../source/profile/types.ts';
import {levelDbfs} from '../../../source/science/signal/level.ts';
import {seededRandom} from '../../../source/science/signal/seededRandom.ts';
import {planSignals, sampleRateHz} from '../../../source/study/playing/plan.ts';
import {signalRenderer} from '../../../source/study/playing/render.ts';

const profile = {
	format: 1,
	name: 'Invented room',
	date: '2026-04-18',
	room: {name: 'Invented room'},
	seats: [{id: 'sofa', name: 'Sofa', reference: true}],
	channels: [{id: 'FL'}, {id: 'FR'}, {id: 'LFE1'}],
	subs: [{id: 'sub1', name: 'Sub', fedBy: 'LFE1'}],
} satisfies Profile;

const plan = planSignals(profile, -30);
const render = signalRenderer(plan, seededRandom(1));

test('signalRenderer gives every noise and tone file its stated level, in its channel alone', () => {
	for (const file of plan.files.filter(
		({what, together}) => what !== 'count' && what !== 'row' && !together,
	)) {
		const {channels, mask} = render(file);
		const order = file.order ?? plan.order!;
		const place = file.channel === undefined ? 0 : order.channels.indexOf(file.channel);
		expect(levelDbfs(channels[place]!)).toBeCloseTo(file.levelDbfs, 6);
		expect(channels.filter(samples => samples !== undefined).length).toBe(1);
		expect(channels.length).toBe(file.channel === undefined ? 1 : order.channels.length);
		expect(mask).toBe(file.channel === undefined ? 0 : order.mask);
	}
});

test('signalRenderer gives every front a noise of its own where several sound at once', () => {
	const file = plan.files.find(({together}) => together)!;
	const {channels} = render(file);
	const [left, right, sub] = channels;
	expect(sub).toBeUndefined();
	for (const samples of [left!, right!]) expect(levelDbfs(samples)).toBeCloseTo(file.levelDbfs, 6);
	const power = (samples: Float64Array) => samples.reduce((sum, value) => sum + value * value, 0);
	const cross = left!.reduce((sum, value, index) => sum + value * right![index]!, 0);
	// Two octaves at 40 to 160 Hz in 5.46 s hold some 650 independent values: likeness 1/√650 = 0.04, three of these.
	expect(Math.abs(cross) / Math.sqrt(power(left!) * power(right!))).toBeLessThan(0.12);
});

test('signalRenderer counts through the channels one after the other, never two at once', () => {
	const {channels} = render(plan.files.find(({what}) => what === 'count')!);
	const spans = channels.map(samples => {
		const first = samples!.findIndex(value => value !== 0);
		const last = samples!.findLastIndex(value => value !== 0);
		return [first, last] as const;
	});
	for (const [index, [first]] of spans.entries()) {
		if (index > 0) expect(first).toBeGreaterThan(spans[index - 1]![1] + 0.9 * sampleRateHz);
	}
});

test('signalRenderer gives the same samples for the same seed', () => {
	const again = signalRenderer(plan, seededRandom(1));
	const [file] = plan.files;
	const [one, other] = [again, signalRenderer(plan, seededRandom(1))].map(make => make(file!).channels[0]!);
	expect(one!.every((value, index) => value === other![index])).toBe(true);
});

test('a row holds 12 s a tone, as many blips before each as its number', () => {
	const file = plan.files.find(({what}) => what === 'row')!;
	const samples = render(file).channels[0]!;
	expect(samples.length).toBe(file.row!.length * 12 * sampleRateHz);
	for (const index of file.row!.keys()) {
		const from = index * 12 * sampleRateHz;
		const millisecond = sampleRateHz / 1000;
		// Loudness of each 10 ms; a rise from silence is a blip, the last one the tone itself.
		const isOn = Array.from({length: 1200}, (_, at) =>
			samples
				.subarray(from + at * 10 * millisecond, from + (at + 1) * 10 * millisecond)
				.some(value => Math.abs(value) > 1e-3),
		);
		expect(isOn.filter((on, at) => on && !isOn[at - 1])).toHaveLength(index + 2);
		const level = levelDbfs(samples.slice(from + 5 * sampleRateHz, from + 10 * sampleRateHz));
		expect(level).toBeCloseTo(file.levelDbfs, 1);
	}
});
