type Table = {readonly cosines: Float64Array; readonly sines: Float64Array};
const tables = new Map<number, Table>();

function tableOf(n: number): Table {
	let table = tables.get(n);
	if (!table) {
		const at = (of: (angle: number) => number) =>
			Float64Array.from({length: n / 2}, (_, k) => of((2 * Math.PI * k) / n));
		table = {cosines: at(Math.cos), sines: at(Math.sin)};
		tables.set(n, table);
	}

	return table;
}

/** A plain radix-2 transform of the test's own, in place; `isBack` gives the inverse with its 1/n. */
export function transform(real: Float64Array, imaginary: Float64Array, isBack = false): void {
	const n = real.length;
	for (let i = 1, j = 0; i < n; i += 1) {
		let bit = n >> 1;
		for (; j & bit; bit >>= 1) j ^= bit;
		j ^= bit;
		if (i < j) {
			[real[i], real[j]] = [real[j]!, real[i]!];
			[imaginary[i], imaginary[j]] = [imaginary[j]!, imaginary[i]!];
		}
	}

	const sign = isBack ? 1 : -1;
	const {cosines, sines} = tableOf(n);

	for (let size = 2; size <= n; size *= 2) {
		const half = size / 2;
		const step = n / size;
		for (let start = 0; start < n; start += size)
			for (let k = 0; k < half; k += 1) {
				const c = cosines[k * step]!;
				const s = sign * sines[k * step]!;
				const [p, q] = [start + k, start + k + half];
				const a = real[q]! * c - imaginary[q]! * s;
				const b = real[q]! * s + imaginary[q]! * c;
				real[q] = real[p]! - a;
				imaginary[q] = imaginary[p]! - b;
				real[p] = real[p]! + a;
				imaginary[p] = imaginary[p]! + b;
			}
	}

	if (isBack)
		for (let i = 0; i < n; i += 1) {
			real[i] = real[i]! / n;
			imaginary[i] = imaginary[i]! / n;
		}
}

/** Next power of two. */
export const powerOfTwo = (length: number) => 2 ** Math.ceil(Math.log2(length));
