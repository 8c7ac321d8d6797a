/**
Complex transform of half the tables' length, sorted as it goes; four at a time, two at the end where that is left.

@param parts - Real and imaginary part, which hold the input, and as much memory again.
@returns The two of them that hold the result.
@see T. G. Stockham, High-speed convolution and correlation, AFIPS 28 (1966) 229; radix 4 as in Van Loan, Computational
Frameworks for the Fast Fourier Transform (1992), 2.4.
*/
export function complexTransform(
	parts: readonly [Float64Array, Float64Array, Float64Array, Float64Array],
	cosines: Float64Array,
	sines: Float64Array,
): readonly [Float64Array, Float64Array] {
	const [xr, xi, yr, yi] = parts;
	if (xr.length < 4) return laterSteps(parts, xr.length, 1, cosines, sines);
	firstStep(xr, xi, 0, 1, yr, yi, cosines, sines);
	return laterSteps([yr, yi, xr, xi], xr.length / 4, 4, cosines, sines);
}

/**
The same of values that lie by turns, real and imaginary, which are left as they are.

@param values - Shape (2n), n ≥ 4.
@param parts - Memory, shape (n) each.
*/
export function complexTransformOf(
	values: Float64Array,
	parts: readonly [Float64Array, Float64Array, Float64Array, Float64Array],
	cosines: Float64Array,
	sines: Float64Array,
): readonly [Float64Array, Float64Array] {
	const [xr, xi, yr, yi] = parts;
	firstStep(values, values, 1, 2, yr, yi, cosines, sines);
	return laterSteps([yr, yi, xr, xi], xr.length / 4, 4, cosines, sines);
}

function laterSteps(
	parts: readonly [Float64Array, Float64Array, Float64Array, Float64Array],
	fromLength: number,
	fromStride: number,
	cosines: Float64Array,
	sines: Float64Array,
): readonly [Float64Array, Float64Array] {
	let [xr, xi, yr, yi] = parts;
	let length = fromLength;
	let stride = fromStride;
	while (length >= 4) {
		quarterStep(xr, xi, yr, yi, length, stride, cosines, sines);
		[xr, xi, yr, yi] = [yr, yi, xr, xi];
		length /= 4;
		stride *= 4;
	}

	if (length === 2) {
		for (let q = 0; q < stride; q += 1) {
			const a = xr[q]!;
			const b = xi[q]!;
			const c = xr[q + stride]!;
			const d = xi[q + stride]!;
			yr[q] = a + c;
			yi[q] = b + d;
			yr[q + stride] = a - c;
			yi[q + stride] = b - d;
		}

		return [yr, yi];
	}

	return [xr, xi];
}

/** The first step, whose stride is 1, from values `each` apart; imaginary ones lie `off` behind. */
function firstStep(
	xr: Float64Array,
	xi: Float64Array,
	off: number,
	each: number,
	yr: Float64Array,
	yi: Float64Array,
	cosines: Float64Array,
	sines: Float64Array,
): void {
	const quarter = yr.length / 4;
	const apart = each * quarter;
	for (let p = 0; p < quarter; p += 1) {
		const c1 = cosines[2 * p]!;
		const s1 = -sines[2 * p]!;
		const c2 = c1 * c1 - s1 * s1;
		const s2 = 2 * c1 * s1;
		const c3 = c1 * c2 - s1 * s2;
		const s3 = c1 * s2 + s1 * c2;
		const at = each * p;
		const ar = xr[at]!;
		const ai = xi[at + off]!;
		const br = xr[at + apart]!;
		const bi = xi[at + apart + off]!;
		const cr = xr[at + 2 * apart]!;
		const ci = xi[at + 2 * apart + off]!;
		const dr = xr[at + 3 * apart]!;
		const di = xi[at + 3 * apart + off]!;
		const sumR = ar + cr;
		const sumI = ai + ci;
		const lessR = ar - cr;
		const lessI = ai - ci;
		const otherR = br + dr;
		const otherI = bi + di;
		const turnR = di - bi;
		const turnI = br - dr;
		const goal = 4 * p;
		yr[goal] = sumR + otherR;
		yi[goal] = sumI + otherI;
		const pR = lessR - turnR;
		const pI = lessI - turnI;
		yr[goal + 1] = c1 * pR - s1 * pI;
		yi[goal + 1] = c1 * pI + s1 * pR;
		const mR = sumR - otherR;
		const mI = sumI - otherI;
		yr[goal + 2] = c2 * mR - s2 * mI;
		yi[goal + 2] = c2 * mI + s2 * mR;
		const nR = lessR + turnR;
		const nI = lessI + turnI;
		yr[goal + 3] = c3 * nR - s3 * nI;
		yi[goal + 3] = c3 * nI + s3 * nR;
	}
}

function quarterStep(
	xr: Float64Array,
	xi: Float64Array,
	yr: Float64Array,
	yi: Float64Array,
	length: number,
	stride: number,
	cosines: Float64Array,
	sines: Float64Array,
): void {
	const quarter = length / 4;
	const apart = quarter * stride;
	for (let p = 0; p < quarter; p += 1) {
		// The tables are for twice the complex length.
		const c1 = cosines[2 * p * stride]!;
		const s1 = -sines[2 * p * stride]!;
		const c2 = c1 * c1 - s1 * s1;
		const s2 = 2 * c1 * s1;
		const c3 = c1 * c2 - s1 * s2;
		const s3 = c1 * s2 + s1 * c2;
		const from = p * stride;
		const to = 4 * p * stride;
		for (let q = 0; q < stride; q += 1) {
			const at = from + q;
			const ar = xr[at]!;
			const ai = xi[at]!;
			const br = xr[at + apart]!;
			const bi = xi[at + apart]!;
			const cr = xr[at + 2 * apart]!;
			const ci = xi[at + 2 * apart]!;
			const dr = xr[at + 3 * apart]!;
			const di = xi[at + 3 * apart]!;
			const sumR = ar + cr;
			const sumI = ai + ci;
			const lessR = ar - cr;
			const lessI = ai - ci;
			const otherR = br + dr;
			const otherI = bi + di;
			// j·(b − d)
			const turnR = di - bi;
			const turnI = br - dr;
			const goal = to + q;
			yr[goal] = sumR + otherR;
			yi[goal] = sumI + otherI;
			const pR = lessR - turnR;
			const pI = lessI - turnI;
			yr[goal + stride] = c1 * pR - s1 * pI;
			yi[goal + stride] = c1 * pI + s1 * pR;
			const mR = sumR - otherR;
			const mI = sumI - otherI;
			yr[goal + 2 * stride] = c2 * mR - s2 * mI;
			yi[goal + 2 * stride] = c2 * mI + s2 * mR;
			const nR = lessR + turnR;
			const nI = lessI + turnI;
			yr[goal + 3 * stride] = c3 * nR - s3 * nI;
			yi[goal + 3 * stride] = c3 * nI + s3 * nR;
		}
	}
}
