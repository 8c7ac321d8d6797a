import type {MeterReading, Profile} from '../../../../source/profile/types.ts';

type Complex = readonly [real: number, imaginary: number];
const times = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c];
const over = ([a, b]: Complex, [c, d]: Complex): Complex => {
	const size = c * c + d * d;
	return [(a * c + b * d) / size, (b * c - a * d) / size];
};

/** s² + √2·s + 1 at s = jf/fc: the second-order Butterworth polynomial of every filter textbook. */
const polynomial = (ratio: number): Complex => [1 - ratio * ratio, Math.SQRT2 * ratio];
/** Second-order Butterworth high-pass. */
const highPass = (ratio: number) => over([-ratio * ratio, 0], polynomial(ratio));
/** Fourth-order Linkwitz-Riley low-pass: two Butterworth ones in a row. */
const lowPass = (ratio: number) => over([1, 0], times(polynomial(ratio), polynomial(ratio)));

/** What stands in the receiver: delay of the sub, its polarity, and the crossover of the main. */
export type Standing = {
	readonly subDelayMs: number;
	readonly isInverted: boolean;
	readonly crossoverHertz: number;
};

export type SimulatedBlend = {
	readonly former: Standing;
	readonly intended: Standing;
	/** Arrival of the sub after the main with no delay in the box, ms. */
	readonly lagMs: number;
	readonly mainDb: number;
	readonly subDb: number;
	readonly tones: readonly number[];
	readonly noiseDb: number;
	readonly repeats: number;
};

function pressure(
	room: SimulatedBlend,
	standing: Standing,
	source: 'FC' | 'sub1',
	hertz: number,
	addedMs: number,
): Complex {
	const ratio = hertz / standing.crossoverHertz;
	if (source === 'FC') {
		const size = 10 ** (room.mainDb / 20);
		return times([size, 0], highPass(ratio));
	}

	const size = 10 ** (room.subDb / 20) * (standing.isInverted ? -1 : 1);
	const phase = (-2 * Math.PI * hertz * (room.lagMs + standing.subDelayMs + addedMs)) / 1000;
	return times([size * Math.cos(phase), size * Math.sin(phase)], lowPass(ratio));
}

function levelDb(parts: readonly Complex[]): number {
	return (
		20 *
		Math.log10(
			Math.hypot(
				parts.reduce((sum, [real]) => sum + real, 0),
				parts.reduce((sum, [, imaginary]) => sum + imaginary, 0),
			),
		)
	);
}

/** One main and one sub through the crossover by complex pressures, with tones at the seat before and after dialling in. */
export function simulateBlend(room: SimulatedBlend, typed: Standing, noise: () => number): Profile {
	const read = (
		round: 'first' | 'proof',
		standing: Standing,
		sources: ReadonlyArray<'FC' | 'sub1'>,
		hertz: number,
		addedDelayMs = 0,
	): MeterReading[] =>
		Array.from({length: room.repeats}, () => ({
			source: sources.length === 1 ? sources[0]! : [...sources],
			seat: 'sofa',
			decibels:
				levelDb(sources.map(source => pressure(room, standing, source, hertz, addedDelayMs))) +
				room.noiseDb * noise(),
			weighting: 'Z',
			signal: {kind: 'tone', hertz},
			round,
			inForce: round === 'first' ? 'before' : 'now',
			...(addedDelayMs !== 0 && {addedDelayMs}),
		}));
	const set = ({subDelayMs, isInverted, crossoverHertz}: Standing) => ({
		channels: {
			FC: {trimDb: {stepped: 0}, delayMs: {stepped: 0}, crossoverHertz},
			LFE1: {trimDb: {stepped: 0}, delayMs: {stepped: subDelayMs}, polarityInverted: isInverted},
		},
	});
	return {
		format: 1,
		name: 'Simulated',
		date: '2026-04-18',
		room: {name: 'Simulated room'},
		seats: [{id: 'sofa', name: 'Sofa', reference: true}],
		channels: [{id: 'FC'}, {id: 'LFE1'}],
		subs: [{id: 'sub1', name: 'Sub', fedBy: 'LFE1'}],
		receiver: {
			timing: {kind: 'delay', stepMs: 0.1, minimumMs: 0, maximumMs: 30},
			trim: {stepDb: 0.5, minimumDb: -12, maximumDb: 12},
			crossover: {choicesHertz: [60, 80, 100, 120], scope: 'per channel'},
			subOutputs: 1,
			invertsSubs: true,
		},
		kit: {meterSigmaDb: 0.3},
		meter: room.tones.flatMap(hertz => [
			...read('first', room.former, ['FC'], hertz),
			...read('first', room.former, ['sub1'], hertz),
			...read('first', room.former, ['FC', 'sub1'], hertz),
			...read('first', room.former, ['FC', 'sub1'], hertz, 2),
			...read('first', room.former, ['FC', 'sub1'], hertz, 4),
			...read('proof', typed, ['FC'], hertz),
			...read('proof', typed, ['sub1'], hertz),
			...read('proof', typed, ['FC', 'sub1'], hertz),
		]),
		settings: [
			{id: 'before', origin: 'found', ...set(room.former)},
			{id: 'now', origin: 'entered', ...set(room.intended)},
		],
	};
}
