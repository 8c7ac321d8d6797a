import type {BassManagement} from '../../../profile/ask/bassManagement.ts';
import type {AnalogFilter} from '../../../science/acoustics/filters/analogFilter.ts';
import {type BoxData, boxFilter} from '../../../science/acoustics/filters/box.ts';
import {filterResponse} from '../../../science/acoustics/filters/response.ts';
import {mainsPath, type SubModel, subPath} from './model.ts';

export type CrossoverCurves = {
	/** Shape (n), hertz, evenly spread on a logarithmic axis. */
	readonly frequenciesHz: Float64Array;
	/** Shape (n), dB re pass band. */
	readonly mainsDb: Float64Array;
	readonly subDb: Float64Array;
	readonly sumDb: Float64Array;
};

/**
Curves to draw: speaker, sub and their sum through a crossover.

@param hertz - Crossover, hertz.
@param subDelayMs - Arrival of the sub after the speaker, ms.
@param points - Number of frequencies from 20 to 400 Hz; 97 where not given.
*/
export function crossoverCurves(
	speaker: BoxData,
	sub: SubModel,
	management: BassManagement,
	hertz: number,
	subDelayMs: number,
	inverted: boolean,
	points = 97,
): CrossoverCurves {
	const frequenciesHz = Float64Array.from({length: points}, (_, index) => 20 * 20 ** (index / (points - 1)));
	const level = (real: number, imaginary: number) => 20 * Math.log10(Math.hypot(real, imaginary));
	const respond = (filter: AnalogFilter) => filterResponse(filter, frequenciesHz);
	const mains = respond(mainsPath(boxFilter(speaker), management, hertz));
	const upper = respond(subPath(sub, management, hertz));
	const lower = respond(sub.low);
	const sign = inverted ? -1 : 1;
	const mainsDb = new Float64Array(points);
	const subDb = new Float64Array(points);
	const sumDb = new Float64Array(points);
	for (const [index, f] of frequenciesHz.entries()) {
		const real = upper.real[index]! * lower.real[index]! - upper.imaginary[index]! * lower.imaginary[index]!;
		const imaginary =
			upper.real[index]! * lower.imaginary[index]! + upper.imaginary[index]! * lower.real[index]!;
		const angle = -2 * Math.PI * f * (subDelayMs / 1000);
		const turnedReal = sign * (real * Math.cos(angle) - imaginary * Math.sin(angle));
		const turnedImaginary = sign * (real * Math.sin(angle) + imaginary * Math.cos(angle));
		mainsDb[index] = level(mains.real[index]!, mains.imaginary[index]!);
		subDb[index] = level(real, imaginary);
		sumDb[index] = level(mains.real[index]! + turnedReal, mains.imaginary[index]! + turnedImaginary);
	}

	return {frequenciesHz, mainsDb, subDb, sumDb};
}
