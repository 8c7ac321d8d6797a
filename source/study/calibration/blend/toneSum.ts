/** Level per factor of power: dB = ln(power)/k. */
const k = Math.LN10 / 10;

/** No room cancels two sounds better than this below their powers, as a share of them. Judgement, no source. */
const leastShare = 0.01;
/** A reading in a hole is no surer than this share of the loudest one, in power. */
const leastWeighedShare = 0.01;
/**
Smallest determinant of the mean normal matrix at which three unknowns are told apart; three readings a third of a
period apart make 1/4, three within an eighth of a period 0.01.
*/
const leastDeterminant = 0.02;

/** Beyond this noise no longer explains an impossible sum, standard deviations. */
export const mostBeyondSigmas = 3;

/** A value with its standard uncertainty, dB. */
export type Estimate = {readonly value: number; readonly sigma: number};

/** One level of a front speaker and all subs together at a tone. */
export type SumReading = {
	/** Arrival of the subs after the front speaker, ms. */
	readonly laterMs: number;
	readonly inverted: boolean;
	/** Without weighting and background, dB. */
	readonly levelDb: number;
	readonly sigmaDb: number;
	/** Place in the profile's list of meter readings, for messages. */
	readonly index: number;
};

/**
What a tone's levels say about every delay and polarity of the subs.

power = a ± (b·cos ωτ + c·sin ωτ), with τ the subs' arrival after the front speaker; minus where they are inverted.
*/
export type ToneSum = {
	readonly hertz: number;
	/** Power of both without their mutual part, re 0 dB. */
	readonly a: number;
	/** In phase and in quadrature, as read: √(b² + c²) may exceed `a` by noise. */
	readonly b: number;
	readonly c: number;
	/** Covariance of a, b, c; three rows of three. */
	readonly covariance: ReadonlyArray<readonly [number, number, number]>;
	/** √(b² + c²) beyond `a`, in standard deviations; what no two sounds can do. */
	readonly beyondSigmas: number;
	/** The reading that would have to change least for it to be possible. */
	readonly likeliestIndex: number;
};

type Three = readonly [number, number, number];

function rowOf(hertz: number, laterMs: number, inverted: boolean): Three {
	const angle = (2 * Math.PI * hertz * laterMs) / 1000;
	const sign = inverted ? -1 : 1;
	return [1, sign * Math.cos(angle), sign * Math.sin(angle)];
}

function determinant([p, q, r]: readonly Three[]): number {
	return (
		p![0] * (q![1] * r![2] - q![2] * r![1]) -
		p![1] * (q![0] * r![2] - q![2] * r![0]) +
		p![2] * (q![0] * r![1] - q![1] * r![0])
	);
}

/** Inverse of a symmetric matrix of three rows by its cofactors. */
function inverse(m: readonly Three[]): Three[] {
	const size = determinant(m);
	const [[a, b, c], [, d, e], [, , f]] = m as [Three, Three, Three];
	return [
		[(d * f - e * e) / size, (c * e - b * f) / size, (b * e - c * d) / size],
		[(c * e - b * f) / size, (a * f - c * c) / size, (b * c - a * e) / size],
		[(b * e - c * d) / size, (b * c - a * e) / size, (a * d - b * b) / size],
	];
}

const times = (m: ReadonlyArray<Three>, v: Three): Three =>
	m.map(row => row[0] * v[0] + row[1] * v[1] + row[2] * v[2]) as unknown as Three;

/**
Fits a, b, c to the levels of one tone by weighted linear least squares in power.

@param readings - At three or more delays or polarities that differ.
@returns `undefined` where they do not tell the three apart.
@see The sum of two phasors, |M + S|² = |M|² + |S|² + 2|M||S|cos φ.
*/
export function fitToneSum(hertz: number, readings: readonly SumReading[]): ToneSum | undefined {
	if (readings.length < 3) return undefined;
	const rows = readings.map(({laterMs, inverted}) => rowOf(hertz, laterMs, inverted));
	const gram = (weights: readonly number[]): Three[] =>
		[0, 1, 2].map(
			i =>
				[0, 1, 2].map(j =>
					rows.reduce((sum, row, at) => sum + weights[at]! * row[i]! * row[j]!, 0),
				) as unknown as Three,
		);
	if (determinant(gram(readings.map(() => 1 / readings.length))) < leastDeterminant) return undefined;
	// Relative to the loudest, so that no level is too large or too small for a double.
	const loudestDb = readings.reduce((high, {levelDb}) => Math.max(high, levelDb), Number.NEGATIVE_INFINITY);
	const powers = readings.map(({levelDb}) => 10 ** ((levelDb - loudestDb) / 10));
	const sigmas = powers.map(
		(power, index) => k * Math.max(power, leastWeighedShare) * readings[index]!.sigmaDb,
	);
	const weights = sigmas.map(sigma => 1 / sigma ** 2);
	const inverted = inverse(gram(weights));
	const right = [0, 1, 2].map(i =>
		rows.reduce((sum, row, at) => sum + weights[at]! * row[i]! * powers[at]!, 0),
	) as unknown as Three;
	const [a, b, c] = times(inverted, right);
	const swing = Math.hypot(b, c);
	const slope: Three = swing === 0 ? [-1, 1, 0] : [-1, b / swing, c / swing];
	const along = times(inverted, slope);
	const sigma = Math.sqrt(slope[0] * along[0] + slope[1] * along[1] + slope[2] * along[2]);
	// How much a reading's own noise moves what is impossible: the one that moves it most is the likeliest to be wrong.
	const levers = rows.map((row, at) =>
		Math.abs((row[0] * along[0] + row[1] * along[1] + row[2] * along[2]) * weights[at]! * sigmas[at]!),
	);
	const likeliest = levers.reduce((best, lever, at) => (lever > levers[best]! ? at : best), 0);
	const scale = 10 ** (loudestDb / 10);
	return {
		hertz,
		a: a * scale,
		b: b * scale,
		c: c * scale,
		covariance: inverted.map(row => row.map(entry => entry * scale * scale) as unknown as Three),
		beyondSigmas: (swing - a) / sigma,
		likeliestIndex: readings[likeliest]!.index,
	};
}

/**
Level of both at any delay and polarity.

@param laterMs - Arrival of the subs after the front speaker, ms.
@returns dB with its standard uncertainty to first order. The mutual part is held to what two sounds can do, and a
cancellation to 20 dB below their powers.
*/
export function sumLevel(
	{hertz, a, b, c, covariance}: ToneSum,
	laterMs: number,
	inverted: boolean,
): {readonly value: number; readonly sigma: number} {
	const row = rowOf(hertz, laterMs, inverted);
	const held = Math.min(1, a / Math.hypot(b, c));
	const power = Math.max(a + held * (row[1] * b + row[2] * c), leastShare * a);
	const along = times(covariance, row);
	const variance = row[0] * along[0] + row[1] * along[1] + row[2] * along[2];
	return {value: 10 * Math.log10(power), sigma: Math.sqrt(Math.max(0, variance)) / (k * power)};
}
