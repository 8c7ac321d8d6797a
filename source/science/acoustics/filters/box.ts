import {type AnalogFilter, throughFilter} from './analogFilter.ts';
import {butterworth} from './butterworth.ts';

/** What is known of a box's low end. */
export type BoxData = {
	readonly lowLimitHertz?: number | undefined;
	readonly lowLimitDropDb?: 3 | 6 | 10 | undefined;
	readonly box?: 'closed' | 'vented' | undefined;
	/** Total Q of a closed box. */
	readonly totalQ?: number | undefined;
};

const butterworthQ = Math.SQRT1_2;

/** A data sheet's "−3 dB" is the half-power point, −3.01 dB. */
const powerRatioAtDrop = {3: 0.5, 6: 0.25, 10: 0.1} as const;

/**
Closed box: second-order high-pass of resonance fc and total Q.

@param resonanceHz - Hertz, > 0.
@param totalQ - > 0; 0.7071 is the Butterworth alignment.
@see R. H. Small, Closed-Box Loudspeaker Systems, JAES 20 (1972) 798–808.
*/
export function closedBox(resonanceHz: number, totalQ: number): AnalogFilter {
	// Roots of s² + s·fc/Q + fc².
	const half = resonanceHz / (2 * totalQ);
	const discriminant = half * half - resonanceHz * resonanceHz;
	if (discriminant < 0) {
		const side = Math.sqrt(-discriminant);
		return {poleReal: [-half, -half], poleImaginary: [side, -side], zerosAtOrigin: 2, gain: 1};
	}

	const root = Math.sqrt(discriminant);
	// The product of the roots is fc²; the smaller one from it keeps its digits.
	return {
		poleReal: [-half - root, -(resonanceHz * resonanceHz) / (half + root)],
		poleImaginary: [0, 0],
		zerosAtOrigin: 2,
		gain: 1,
	};
}

/**
Resonance of a closed box from the frequency at which it is down by a stated power ratio.

@param limitHz - Hertz, > 0.
@param powerRatio - |H|² at the limit, between 0 and 1.
@param totalQ - > 0.
@returns Hertz. For a power ratio of 0.5 it is Small's f3/fc, solved for fc.
@see R. H. Small, JAES 20 (1972) 798–808: |H|² = x⁴/(x⁴ + (1/Q² − 2)x² + 1), x = f/fc.
*/
export function closedBoxResonanceHz(limitHz: number, powerRatio: number, totalQ: number): number {
	// In y = 1/x²: y² + (1/Q² − 2)·y + 1 − 1/ratio = 0, of which the positive root is meant.
	const middle = 1 / (totalQ * totalQ) - 2;
	const y = (-middle + Math.sqrt(middle * middle + 4 * (1 / powerRatio - 1))) / 2;
	return limitHz * Math.sqrt(y);
}

/**
Corner of a fourth-order Butterworth high-pass, the usual model of a vented box, from its limit.

@param limitHz - Hertz, > 0.
@param powerRatio - |H|² at the limit, between 0 and 1.
*/
export function ventedBoxCornerHz(limitHz: number, powerRatio: number): number {
	return limitHz * (1 / powerRatio - 1) ** (1 / 8);
}

/**
Low end of a speaker or sub as a high-pass: closed boxes of second order, vented ones of fourth.
A box whose kind is not given counts as closed, the gentler of the two.

@param data - Without a limit, the filter that changes nothing.
*/
export function boxFilter(data: BoxData): AnalogFilter {
	if (data.lowLimitHertz === undefined) return throughFilter;
	const powerRatio = powerRatioAtDrop[data.lowLimitDropDb ?? 3];
	if (data.box === 'vented') return butterworth('high', 4, ventedBoxCornerHz(data.lowLimitHertz, powerRatio));
	const totalQ = data.totalQ ?? butterworthQ;
	return closedBox(closedBoxResonanceHz(data.lowLimitHertz, powerRatio, totalQ), totalQ);
}

/**
Frequency at which a box is down to half power, whatever drop its limit was stated for.

@param data - What is known of the box.
@returns Hertz, or undefined without a limit.
*/
export function halfPowerHz(data: BoxData): number | undefined {
	if (data.lowLimitHertz === undefined) return undefined;
	const powerRatio = powerRatioAtDrop[data.lowLimitDropDb ?? 3];
	if (data.box === 'vented') return ventedBoxCornerHz(data.lowLimitHertz, powerRatio);
	const totalQ = data.totalQ ?? butterworthQ;
	const resonance = closedBoxResonanceHz(data.lowLimitHertz, powerRatio, totalQ);
	return resonance / closedBoxResonanceHz(1, 0.5, totalQ);
}
