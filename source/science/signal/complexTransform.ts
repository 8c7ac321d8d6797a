import {eighthStep} from './eighthStep.ts';

/** Memory of a transform: shape (2n) each. */
export type Workspace = readonly [Float64Array, Float64Array];

/**
Complex transform, sorted as it goes; eight or four at a time, two at the end where that is left. Real and imaginary parts lie by turns,
so that a step touches few places of memory at once.

@param values - Shape (2n), n a power of two ≥ 2; left as it is unless it is the second of the workspace.
@param cosines - Shape (n/2 + 1) at least, of 2πk/(2n); sines alike.
@returns The one of the workspace that holds the result.
@see T. G. Stockham, High-speed convolution and correlation, AFIPS 28 (1966) 229; radix 4 as in Van Loan, Computational
Frameworks for the Fast Fourier Transform (1992), 2.4.
*/
export function complexTransform(
	values: Float64Array,
	[first, second]: Workspace,
	cosines: Float64Array,
	sines: Float64Array,
): Float64Array {
	let length = first.length / 2;
	let stride = 1;
	const isPowerOfEight = Math.log2(length) % 3 === 0;
	let [from, to, spare] = [values, first, second];
	while (length >= 4) {
		// Eight at a time, but first where a step is saved by it only, and not so that a single pair is left.
		const parts = (stride > 1 || isPowerOfEight) && (length === 8 || length >= 32) ? 8 : 4;
		if (stride === 1 && parts === 4) firstStep(from, to, cosines, sines);
		else if (parts === 8) eighthStep(from, to, length, stride, cosines, sines);
		else quarterStep(from, to, length, stride, cosines, sines);
		[from, to, spare] = [to, spare, to];
		length /= parts;
		stride *= parts;
	}

	if (length < 2) return from;
	for (let q = 0; q < 2 * stride; q += 1) {
		const a = from[q]!;
		const b = from[q + 2 * stride]!;
		to[q] = a + b;
		to[q + 2 * stride] = a - b;
	}

	return to;
}

/** The first step, whose stride is 1, so that there is nothing to go along. */
function firstStep(x: Float64Array, y: Float64Array, cosines: Float64Array, sines: Float64Array): void {
	const apart = y.length / 4;
	for (let p = 0; 2 * p < apart; p += 1) {
		const c1 = cosines[2 * p]!;
		const s1 = -sines[2 * p]!;
		const c2 = c1 * c1 - s1 * s1;
		const s2 = 2 * c1 * s1;
		const c3 = c1 * c2 - s1 * s2;
		const s3 = c1 * s2 + s1 * c2;
		const at = 2 * p;
		const ar = x[at]!;
		const ai = x[at + 1]!;
		const br = x[at + apart]!;
		const bi = x[at + apart + 1]!;
		const cr = x[at + 2 * apart]!;
		const ci = x[at + 2 * apart + 1]!;
		const dr = x[at + 3 * apart]!;
		const di = x[at + 3 * apart + 1]!;
		const sumR = ar + cr;
		const sumI = ai + ci;
		const lessR = ar - cr;
		const lessI = ai - ci;
		const otherR = br + dr;
		const otherI = bi + di;
		// j·(b − d)
		const turnR = di - bi;
		const turnI = br - dr;
		const goal = 8 * p;
		y[goal] = sumR + otherR;
		y[goal + 1] = sumI + otherI;
		const pR = lessR - turnR;
		const pI = lessI - turnI;
		y[goal + 2] = c1 * pR - s1 * pI;
		y[goal + 3] = c1 * pI + s1 * pR;
		const mR = sumR - otherR;
		const mI = sumI - otherI;
		y[goal + 4] = c2 * mR - s2 * mI;
		y[goal + 5] = c2 * mI + s2 * mR;
		const nR = lessR + turnR;
		const nI = lessI + turnI;
		y[goal + 6] = c3 * nR - s3 * nI;
		y[goal + 7] = c3 * nI + s3 * nR;
	}
}

function quarterStep(
	x: Float64Array,
	y: Float64Array,
	length: number,
	stride: number,
	cosines: Float64Array,
	sines: Float64Array,
): void {
	const quarter = length / 4;
	const apart = 2 * quarter * stride;
	const step = 2 * stride;
	for (let p = 0; p < quarter; p += 1) {
		// The tables are for twice the complex length.
		const c1 = cosines[2 * p * stride]!;
		const s1 = -sines[2 * p * stride]!;
		const c2 = c1 * c1 - s1 * s1;
		const s2 = 2 * c1 * s1;
		const c3 = c1 * c2 - s1 * s2;
		const s3 = c1 * s2 + s1 * c2;
		let at = p * step;
		let goal = 4 * p * step;
		for (const end = at + step; at < end; at += 2, goal += 2) {
			const ar = x[at]!;
			const ai = x[at + 1]!;
			const br = x[at + apart]!;
			const bi = x[at + apart + 1]!;
			const cr = x[at + 2 * apart]!;
			const ci = x[at + 2 * apart + 1]!;
			const dr = x[at + 3 * apart]!;
			const di = x[at + 3 * apart + 1]!;
			const sumR = ar + cr;
			const sumI = ai + ci;
			const lessR = ar - cr;
			const lessI = ai - ci;
			const otherR = br + dr;
			const otherI = bi + di;
			const turnR = di - bi;
			const turnI = br - dr;
			y[goal] = sumR + otherR;
			y[goal + 1] = sumI + otherI;
			const pR = lessR - turnR;
			const pI = lessI - turnI;
			y[goal + step] = c1 * pR - s1 * pI;
			y[goal + step + 1] = c1 * pI + s1 * pR;
			const mR = sumR - otherR;
			const mI = sumI - otherI;
			y[goal + 2 * step] = c2 * mR - s2 * mI;
			y[goal + 2 * step + 1] = c2 * mI + s2 * mR;
			const nR = lessR + turnR;
			const nI = lessI + turnI;
			y[goal + 3 * step] = c3 * nR - s3 * nI;
			y[goal + 3 * step + 1] = c3 * nI + s3 * nR;
		}
	}
}
