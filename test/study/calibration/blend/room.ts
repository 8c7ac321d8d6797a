import type {MeterReading, Profile} from '../../../../source/profile/types.ts';
import {blend} from '../../../../source/study/calibration/blend/blend.ts';
import type {BlendWay} from '../../../../source/study/calibration/blend/odds.ts';
import type {BlendStep} from '../../../../source/study/calibration/blend/steps.ts';
import {blendInputs} from '../../../afresh.ts';

/** Evenly spread numbers between 0 and 1 from a seed. @see Park & Miller, Comm. ACM 31 (1988) 1192: 16807 modulo 2^31 − 1. */
export function seeded(seed: number): () => number {
	let state = seed;
	return () => {
		state = (state * 16807) % 2147483647;
		return state / 2147483647;
	};
}

/** Normally spread numbers. @see Box & Muller, Ann. Math. Stat. 29 (1958) 610. */
export function normal(random: () => number): () => number {
	return () => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
}

type Complex = readonly [real: number, imaginary: number];
const times = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c];
const over = ([a, b]: Complex, [c, d]: Complex): Complex => {
	const size = c * c + d * d;
	return [(a * c + b * d) / size, (b * c - a * d) / size];
};

/** s² + √2·s + 1 at s = jx. */
const butterworth2 = (x: number): Complex => [1 - x * x, Math.SQRT2 * x];
export const highPass2 = (f: number, corner: number): Complex =>
	over([-((f / corner) ** 2), 0], butterworth2(f / corner));
export const lowPass4 = (f: number, corner: number): Complex =>
	over([1, 0], times(butterworth2(f / corner), butterworth2(f / corner)));

/** An invented room: what is true of it, which no reading tells directly. */
export type Truth = {
	readonly crossoverHertz: number;
	/** Half-power limits of the closed boxes, hertz. */
	readonly mainsLimitHertz: number;
	readonly subLimitHertz: number;
	/** Arrival of each source at the seat with no delay set, ms. */
	readonly arrivalMs: Readonly<Record<string, number>>;
	readonly invertedAtBox?: readonly string[];
	/** Level of each source at a tone before filters, dB. */
	readonly levelDb: (id: string, hertz: number) => number;
};

/** What the boxes do on top: delay in ms and polarity. */
export type Boxes = {
	readonly delayMs: Readonly<Record<string, number>>;
	readonly inverted?: readonly string[];
};

/** Level at the seat of all the sources together at a tone, dB; the law of superposition, with its own filters. */
export function trueLevel(truth: Truth, boxes: Boxes, ids: readonly string[], hertz: number): number {
	let sum: Complex = [0, 0];
	for (const id of ids) {
		const isSub = id.startsWith('sub');
		const path = isSub
			? times(lowPass4(hertz, truth.crossoverHertz), highPass2(hertz, truth.subLimitHertz))
			: times(highPass2(hertz, truth.crossoverHertz), highPass2(hertz, truth.mainsLimitHertz));
		const turns = [truth.invertedAtBox, boxes.inverted].filter(list => list?.includes(id)).length;
		const amplitude = 10 ** (truth.levelDb(id, hertz) / 20) * (turns === 1 ? -1 : 1);
		const angle = -2 * Math.PI * hertz * ((truth.arrivalMs[id]! + (boxes.delayMs[id] ?? 0)) / 1000);
		const [real, imaginary] = times(path, [amplitude * Math.cos(angle), amplitude * Math.sin(angle)]);
		sum = [sum[0] + real, sum[1] + imaginary];
	}

	return 20 * Math.log10(Math.hypot(sum[0], sum[1]));
}

/** Level of noise of its own into each front at once, with the subs behind them, dB re its level in one channel. */
export function trueNoiseLevel(
	truth: Truth,
	boxes: Boxes,
	mains: readonly string[],
	subs: readonly string[],
	fromHertz: number,
	toHertz: number,
): number {
	const points = 200;
	let power = 0;
	for (const main of mains) {
		for (let index = 0; index < points; index++) {
			const hertz = fromHertz * (toHertz / fromHertz) ** ((index + 0.5) / points);
			power += 10 ** (trueLevel(truth, boxes, [main, ...subs], hertz) / 10) / points;
		}
	}

	return 10 * Math.log10(power);
}

/** One reading, as a step of the blend asks for it. */
export function takeReading(
	truth: Truth,
	boxes: Boxes,
	{source, signal, added, seat, part}: BlendStep,
	noiseDb: number,
	inForce?: MeterReading['inForce'],
): MeterReading {
	const ids = [source].flat();
	const subs = ids.filter(id => id.startsWith('sub'));
	const mains = ids.filter(id => !subs.includes(id));
	const delayMs = {...boxes.delayMs};
	for (const id of subs) delayMs[id] = (delayMs[id] ?? 0) + added.delayMs;
	const stand = boxes.inverted ?? [];
	const inverted = added.isTurned
		? [...stand.filter(id => !subs.includes(id)), ...subs.filter(id => !stand.includes(id))]
		: stand;
	const state = {delayMs, inverted};
	return {
		source,
		seat,
		decibels:
			(signal.kind === 'tone'
				? trueLevel(truth, state, ids, signal.hertz)
				: trueNoiseLevel(truth, state, mains, subs, signal.fromHertz, signal.toHertz)) + noiseDb,
		weighting: 'Z',
		signal,
		round: 'first',
		...(added.delayMs !== 0 && {addedDelayMs: added.delayMs}),
		...(added.isTurned && {invertedSources: subs}),
		...(signal.kind === 'pink' && {blendPart: part === 'search' ? 'search' : 'verification'}),
		...(inForce !== undefined && {inForce}),
	};
}

/** Takes what the blend asks for until it asks no more, or `most` readings. */
export function walked(
	truth: Truth,
	boxes: Boxes,
	start: Profile,
	{
		way = 'tones',
		most = 100,
		noise = () => 0,
		inForce,
	}: {way?: BlendWay; most?: number; noise?: () => number; inForce?: string} = {},
): Profile {
	let profile = start;
	for (let count = 0; count < most; count++) {
		const {blocks, status} = blend(blendInputs(profile), way);
		const steps = blocks.flatMap(block => block.steps).filter(({isTaken}) => !isTaken);
		if (steps.length === 0 || ['kept', 'put back', 'stands'].includes(status)) break;
		const left = most - (profile.meter?.length ?? 0) + (start.meter?.length ?? 0);
		const readings = steps.slice(0, left).map(step => takeReading(truth, boxes, step, noise(), inForce));
		if (readings.length === 0) break;
		profile = {...profile, meter: [...(profile.meter ?? []), ...readings]};
	}

	return profile;
}

/** The invented room's profile with one or two subs, before any reading. */
export function roomProfile(truth: Truth, change: Partial<Profile> = {}): Profile {
	return {
		format: 1,
		name: 'Invented room',
		date: '2026-04-18',
		room: {name: 'Invented room'},
		seats: [{id: 'sofa', name: 'Sofa', reference: true}],
		channels: [
			...Object.keys(truth.arrivalMs)
				.filter(id => !id.startsWith('sub'))
				.map(id => ({
					id: id as 'FC',
					speaker: {lowLimitHertz: truth.mainsLimitHertz, box: 'closed' as const},
				})),
			{id: 'LFE1'},
		],
		subs: Object.keys(truth.arrivalMs)
			.filter(id => id.startsWith('sub'))
			.map(id => ({
				id,
				name: `Sub ${id.slice(3)}`,
				fedBy: 'LFE1' as const,
				lowLimitHertz: truth.subLimitHertz,
				box: 'closed' as const,
			})),
		receiver: {
			timing: {kind: 'delay', stepMs: 0.1, minimumMs: 0, maximumMs: 30},
			trim: {stepDb: 0.5, minimumDb: -12, maximumDb: 12},
			crossover: {
				choicesHertz: [60, 80, 100],
				scope: 'per channel',
				highPass: {kind: 'butterworth', order: 2},
				lowPass: {kind: 'linkwitz-riley', order: 4},
			},
			subOutputs: 1,
		},
		kit: {meterSigmaDb: 0.3, meterWeighting: 'Z'},
		...change,
	};
}
