import type {BoxesState} from './boxes.ts';
import {lossOf} from './loss.ts';
import {addTo, emptySpectrum, magnitudeAt} from './physics/spectrum.ts';
import {type MainId, subIds} from './places.ts';
import {bassHertz} from './roomSound.ts';
import {arriving} from './sound.ts';
import type {World} from './world.ts';

const judged = ['FC', 'FL', 'LS', 'TpSiL'] as const satisfies readonly MainId[];

/** The crossover chosen for a channel against 80 Hz: ripple where the sum is loudest, and loss as set by distances, dB. */
export type CrossoverTrial = {
	readonly hertz: number;
	/** Whether the speaker's stated limit lies above 80 Hz, so that 80 Hz is no choice. */
	readonly isBound: boolean;
	readonly rippleGainDb: number;
	readonly lossGainDb: number;
};

/** @param boxes - As typed in by distances, with the crossovers chosen. */
export function crossoverTrials(world: World, boxes: BoxesState): CrossoverTrial[] {
	return judged.flatMap(id => {
		const hertz = boxes.channels[id]?.crossoverHertz;
		if (typeof hertz !== 'number') return [];
		const at80 = withCrossover(boxes, id, 80);
		const band = [40, 160] as const;
		return [
			{
				hertz,
				isBound: world.gear.mains[id].statedLowHertz > 80,
				rippleGainDb: rippleOf(world, at80, id) - rippleOf(world, boxes, id),
				lossGainDb: lossOf(world, at80, id, band) - lossOf(world, boxes, id, band),
			},
		];
	});
}

const withCrossover = (boxes: BoxesState, id: MainId, crossoverHertz: number): BoxesState => ({
	...boxes,
	channels: {...boxes.channels, [id]: {...boxes.channels[id]!, crossoverHertz}},
});

/** Largest minus smallest third-octave level of the sum, 40 to 200 Hz, at the delay and polarity of the loudest sum, dB. */
function rippleOf(world: World, boxes: BoxesState, id: MainId): number {
	const point = world.places.seat;
	const main = arriving(world, boxes, id, id, point)!;
	const subs = emptySpectrum(bassHertz.length);
	for (const sub of subIds) addTo(subs, arriving(world, boxes, id, sub, point)!);
	const period = 1000 / (boxes.channels[id]!.crossoverHertz as number);
	let best: number[] = [];
	let bestSum = Number.NEGATIVE_INFINITY;
	for (const sign of [1, -1]) {
		for (let step = -12; step <= 12; step++) {
			const levels = thirdOctaves(main, subs, sign, (step / 24) * period);
			const sum = levels.reduce((total, level) => total + level, 0);
			if (sum > bestSum) [best, bestSum] = [levels, sum];
		}
	}

	return Math.max(...best) - Math.min(...best);
}

function thirdOctaves(
	main: ReturnType<typeof emptySpectrum>,
	subs: ReturnType<typeof emptySpectrum>,
	sign: number,
	delayMs: number,
): number[] {
	const bands = [40, 50, 63, 80, 100, 125, 160, 200];
	const energies = bands.map(() => 0);
	const counts = bands.map(() => 0);
	const sum = emptySpectrum(bassHertz.length);
	addTo(sum, main);
	for (const [index, hertz] of bassHertz.entries()) {
		const band = bands.findIndex(centre => Math.abs(Math.log2(hertz / centre)) <= 1 / 6);
		if (band < 0) continue;
		const angle = (-2 * Math.PI * hertz * delayMs) / 1000;
		const [c, s] = [sign * Math.cos(angle), sign * Math.sin(angle)];
		sum.re[index]! += subs.re[index]! * c - subs.im[index]! * s;
		sum.im[index]! += subs.re[index]! * s + subs.im[index]! * c;
		energies[band]! += magnitudeAt(sum, index) ** 2;
		counts[band]! += 1;
	}

	return energies.map((energy, band) => 10 * Math.log10(energy / counts[band]!));
}
