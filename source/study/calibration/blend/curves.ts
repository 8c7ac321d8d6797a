import type {Profile} from '../../../profile/types.ts';
import type {BlendPairResult} from './blend.ts';
import {collectPairs} from './collect.ts';

export type BlendCurves = {
	/** Shape (n), hertz, from a quarter of the crossover to four times it. */
	readonly frequenciesHz: Float64Array;
	/** Shape (n), dB re the pass bands, set to equal levels: what filters, boxes and the delay found make. */
	readonly stillDb: Float64Array;
	readonly movedDb: Float64Array;
	readonly nowDb: Float64Array;
	/** With the setting in force; as now where there is none. */
	readonly thenDb: Float64Array;
};

const points = 97;

/**
Curves to draw for one pair: each side, and both together now and after the setting, by filters, boxes and the delay
that was found. The room is not in them.

@returns `undefined` where no answer was found.
*/
export function blendCurves(profile: Profile, result: BlendPairResult): BlendCurves | undefined {
	const [minimum] = result.minima;
	const pair = collectPairs(profile).pairs.find(({id}) => id === result.id);
	if (!minimum || !pair) return undefined;
	const {paths} = pair;
	const frequenciesHz = Float64Array.from(
		{length: points},
		(_, index) => (paths.crossoverHertz / 4) * 16 ** (index / (points - 1)),
	);
	const still = paths.still(frequenciesHz);
	const moved = paths.moved(frequenciesHz);
	const sum = (arrivalMs: number, inverted: boolean) =>
		frequenciesHz.map((f, index) => {
			const angle = -2 * Math.PI * f * (arrivalMs / 1000);
			const sign = inverted ? -1 : 1;
			const [a, b] = [moved.real[index]!, moved.imaginary[index]!];
			const real = still.real[index]! + sign * (a * Math.cos(angle) - b * Math.sin(angle));
			const imaginary = still.imaginary[index]! + sign * (a * Math.sin(angle) + b * Math.cos(angle));
			return 20 * Math.log10(Math.hypot(real, imaginary));
		});
	const level = ({real, imaginary}: typeof still) =>
		real.map((value, index) => 20 * Math.log10(Math.hypot(value, imaginary[index]!)));
	const addedMs = result.setting?.addedMs ?? 0;
	const flip = result.setting ? (result.alignment?.flip ?? false) : false;
	return {
		frequenciesHz,
		stillDb: level(still),
		movedDb: level(moved),
		nowDb: sum(minimum.arrivalMs, minimum.inverted),
		thenDb: sum(minimum.arrivalMs + addedMs, minimum.inverted !== flip),
	};
}
