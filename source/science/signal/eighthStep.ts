const root = Math.SQRT1_2;

/**
One step of a complex transform, eight at a time: fewer passes over the memory than four at a time. Sums and differences
of opposite ones first, then four even and four odd lines, turned as they are put down.

@param length - Points that are still to be joined, a power of two ≥ 8.
@param stride - How many transforms of that length lie side by side.
@param cosines - Of 2πk/(2n), as `complexTransform` takes them; sines alike.
@see Van Loan, Computational Frameworks for the Fast Fourier Transform (1992), 2.4.
*/
export function eighthStep(
	x: Float64Array,
	y: Float64Array,
	length: number,
	stride: number,
	cosines: Float64Array,
	sines: Float64Array,
): void {
	const eighth = length / 8;
	const step = 2 * stride;
	const apart = eighth * step;
	for (let p = 0; p < eighth; p += 1) {
		const c1 = cosines[p * step]!;
		const s1 = -sines[p * step]!;
		const c2 = c1 * c1 - s1 * s1;
		const s2 = 2 * c1 * s1;
		const c3 = c1 * c2 - s1 * s2;
		const s3 = c1 * s2 + s1 * c2;
		const c4 = c2 * c2 - s2 * s2;
		const s4 = 2 * c2 * s2;
		const c5 = c2 * c3 - s2 * s3;
		const s5 = c2 * s3 + s2 * c3;
		const c6 = c3 * c3 - s3 * s3;
		const s6 = 2 * c3 * s3;
		const c7 = c3 * c4 - s3 * s4;
		const s7 = c3 * s4 + s3 * c4;
		let at = p * step;
		let goal = 8 * p * step;
		for (const end = at + step; at < end; at += 2, goal += 2) {
			let one = x[at]!;
			let other = x[at + 4 * apart]!;
			const a0r = one + other;
			const b0r = one - other;
			one = x[at + 1]!;
			other = x[at + 4 * apart + 1]!;
			const a0i = one + other;
			const b0i = one - other;
			one = x[at + 2 * apart]!;
			other = x[at + 6 * apart]!;
			const a2r = one + other;
			const b2r = one - other;
			one = x[at + 2 * apart + 1]!;
			other = x[at + 6 * apart + 1]!;
			const a2i = one + other;
			const b2i = one - other;
			one = x[at + apart]!;
			other = x[at + 5 * apart]!;
			const a1r = one + other;
			const b1r = one - other;
			one = x[at + apart + 1]!;
			other = x[at + 5 * apart + 1]!;
			const a1i = one + other;
			const b1i = one - other;
			one = x[at + 3 * apart]!;
			other = x[at + 7 * apart]!;
			const a3r = one + other;
			const b3r = one - other;
			one = x[at + 3 * apart + 1]!;
			other = x[at + 7 * apart + 1]!;
			const a3i = one + other;
			const b3i = one - other;
			// Even lines: four at a time of the sums.
			let pr = a0r + a2r;
			let pi = a0i + a2i;
			let qr = a1r + a3r;
			let qi = a1i + a3i;
			y[goal] = pr + qr;
			y[goal + 1] = pi + qi;
			let r = pr - qr;
			let i = pi - qi;
			y[goal + 4 * step] = c4 * r - s4 * i;
			y[goal + 4 * step + 1] = c4 * i + s4 * r;
			pr = a0r - a2r;
			pi = a0i - a2i;
			qr = a1i - a3i;
			qi = a3r - a1r;
			r = pr + qr;
			i = pi + qi;
			y[goal + 2 * step] = c2 * r - s2 * i;
			y[goal + 2 * step + 1] = c2 * i + s2 * r;
			r = pr - qr;
			i = pi - qi;
			y[goal + 6 * step] = c6 * r - s6 * i;
			y[goal + 6 * step + 1] = c6 * i + s6 * r;
			// Odd lines: of the differences, turned by eighths: b1·(1 − j)/√2, −j·b2, −b3·(1 + j)/√2.
			const d1r = root * (b1r + b1i);
			const d1i = root * (b1i - b1r);
			const d3r = root * (b3i - b3r);
			const d3i = -root * (b3r + b3i);
			pr = b0r + b2i;
			pi = b0i - b2r;
			qr = d1r + d3r;
			qi = d1i + d3i;
			r = pr + qr;
			i = pi + qi;
			y[goal + step] = c1 * r - s1 * i;
			y[goal + step + 1] = c1 * i + s1 * r;
			r = pr - qr;
			i = pi - qi;
			y[goal + 5 * step] = c5 * r - s5 * i;
			y[goal + 5 * step + 1] = c5 * i + s5 * r;
			pr = b0r - b2i;
			pi = b0i + b2r;
			qr = d1i - d3i;
			qi = d3r - d1r;
			r = pr + qr;
			i = pi + qi;
			y[goal + 3 * step] = c3 * r - s3 * i;
			y[goal + 3 * step + 1] = c3 * i + s3 * r;
			r = pr - qr;
			i = pi - qi;
			y[goal + 7 * step] = c7 * r - s7 * i;
			y[goal + 7 * step + 1] = c7 * i + s7 * r;
		}
	}
}
