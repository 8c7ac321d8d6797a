import type {HeardResponse} from '../responses.ts';

/** A response moved in time and level: what arrives `ms` too late is brought forward. */
export function aligned(
	{real, imaginary}: HeardResponse,
	frequenciesHz: Float64Array,
	ms: number,
	db: number,
): HeardResponse {
	const size = 10 ** (-db / 20);
	const movedReal = new Float64Array(real.length);
	const movedImaginary = new Float64Array(real.length);
	for (let index = 0; index < real.length; index += 1) {
		const angle = (2 * Math.PI * frequenciesHz[index]! * ms) / 1000;
		const [c, s] = [size * Math.cos(angle), size * Math.sin(angle)];
		movedReal[index] = real[index]! * c - imaginary[index]! * s;
		movedImaginary[index] = real[index]! * s + imaginary[index]! * c;
	}

	return {real: movedReal, imaginary: movedImaginary};
}

/** one · factor + other · otherFactor, with real factors. */
export function combined(
	one: HeardResponse,
	factor: number,
	other: HeardResponse,
	otherFactor: number,
): HeardResponse {
	return {
		real: one.real.map((value, index) => factor * value + otherFactor * other.real[index]!),
		imaginary: one.imaginary.map((value, index) => factor * value + otherFactor * other.imaginary[index]!),
	};
}

/** Product with a complex curve on the same frequencies. */
export function filteredBy(one: HeardResponse, by: HeardResponse): HeardResponse {
	const real = new Float64Array(one.real.length);
	const imaginary = new Float64Array(one.real.length);
	for (let index = 0; index < real.length; index += 1) {
		const [a, b] = [one.real[index]!, one.imaginary[index]!];
		const [c, d] = [by.real[index]!, by.imaginary[index]!];
		real[index] = a * c - b * d;
		imaginary[index] = a * d + b * c;
	}

	return {real, imaginary};
}

/** Mean of responses, and the scatter of single ones about it within a band: dB below the mean's own level. */
export function meanResponse(
	responses: readonly HeardResponse[],
	frequenciesHz: Float64Array,
	[fromHertz, toHertz]: readonly [number, number],
): {readonly mean: HeardResponse; readonly scatterDb: number} {
	const count = responses.length;
	const real = new Float64Array(frequenciesHz.length);
	const imaginary = new Float64Array(frequenciesHz.length);
	for (const each of responses)
		for (let index = 0; index < real.length; index += 1) {
			real[index] = real[index]! + each.real[index]! / count;
			imaginary[index] = imaginary[index]! + each.imaginary[index]! / count;
		}

	let [off, all] = [0, 0];
	for (let index = 0; index < real.length; index += 1) {
		if (frequenciesHz[index]! < fromHertz || frequenciesHz[index]! > toHertz) continue;
		for (const each of responses)
			off +=
				((each.real[index]! - real[index]!) ** 2 + (each.imaginary[index]! - imaginary[index]!) ** 2) / count;
		all += real[index]! ** 2 + imaginary[index]! ** 2;
	}

	return {mean: {real, imaginary}, scatterDb: 10 * Math.log10(Math.max(off, 1e-20) / Math.max(all, 1e-20))};
}
