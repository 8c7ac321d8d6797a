import type {AnalogFilter} from './analogFilter.ts';

export type Pass = 'low' | 'high';

/**
Butterworth low-pass or high-pass, −3.01 dB at its corner for every order.

@param pass - Which side passes.
@param order - Whole number from 1 to 8.
@param cornerHz - Hertz, > 0.
@throws {RangeError} If the order or the corner is out of range.
@see S. Butterworth, Experimental Wireless 7 (1930) 536: |H|² = 1/(1 + (f/fc)^2n).
*/
export function butterworth(pass: Pass, order: number, cornerHz: number): AnalogFilter {
	if (!Number.isInteger(order) || order < 1 || order > 8)
		throw new RangeError(`order must be a whole number from 1 to 8, got ${order}`);
	if (!(cornerHz > 0 && Number.isFinite(cornerHz)))
		throw new RangeError(`cornerHz must be finite and > 0 Hz, got ${cornerHz}`);
	const poleReal: number[] = [];
	const poleImaginary: number[] = [];
	for (let k = 1; k <= order; k += 1) {
		// Poles evenly spread on the left half of the circle of radius fc; 1/s maps that set onto itself.
		const angle = (Math.PI * (2 * k + order - 1)) / (2 * order);
		poleReal.push(cornerHz * Math.cos(angle));
		poleImaginary.push(cornerHz * Math.sin(angle));
	}

	return pass === 'low'
		? {poleReal, poleImaginary, zerosAtOrigin: 0, gain: cornerHz ** order}
		: {poleReal, poleImaginary, zerosAtOrigin: order, gain: 1};
}
