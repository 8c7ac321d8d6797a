import type {MeterReading, Profile} from '../../../../source/profile/types.ts';
import type {BlendStep} from '../../../../source/study/calibration/blend/steps.ts';

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

/** One reading, as a step of the procedure asks for it. */
export function takeReading(
	truth: Truth,
	boxes: Boxes,
	step: Pick<BlendStep, 'source' | 'hertz' | 'addedDelayMs' | 'seat'>,
	moved: readonly string[],
	noiseDb: number,
	inForce?: MeterReading['inForce'],
): MeterReading {
	const ids = [step.source].flat();
	const delayMs = {...boxes.delayMs};
	for (const id of moved) delayMs[id] = (delayMs[id] ?? 0) + step.addedDelayMs;
	return {
		source: step.source,
		seat: step.seat,
		decibels: trueLevel(truth, {...boxes, delayMs}, ids, step.hertz) + noiseDb,
		weighting: 'Z',
		signal: {kind: 'tone', hertz: step.hertz},
		round: 'first',
		addedDelayMs: step.addedDelayMs,
		...(inForce !== undefined && {inForce}),
	};
}

/** The invented room's profile with one or two subs, before any reading. */
export function roomProfile(truth: Truth, change: Partial<Profile> = {}): Profile {
	return {
		format: 1,
		name: 'Invented room',
		date: '2026-04-18',
		room: {name: 'Invented room'},
		seats: [{id: 'sofa', name: 'Sofa', reference: true}],
		channels: [{id: 'FC', speaker: {lowLimitHertz: truth.mainsLimitHertz, box: 'closed'}}, {id: 'LFE1'}],
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
