/** What was read against what was predicted, and what each candidate mistake would do to it. */
export type Evidence = {
	/** Shape (n): read minus predicted, dB. */
	readonly residuals: readonly number[];
	/** Shape (n), dB, each > 0. */
	readonly sigmas: readonly number[];
	/** Shape (m, n): change of each reading by each mistake alone, dB. */
	readonly effects: readonly Float64Array[];
	/** Shape (m): natural logarithm of how often each mistake happens. */
	readonly logPriors: readonly number[];
	/** Shape (m): two mistakes of one name exclude each other, being two values of one entry. */
	readonly entries: readonly string[];
	/** Shape (n): whether one source sounded alone, so that two mistakes that change it would be two in one entry. */
	readonly isSingle: readonly boolean[];
	/** Change of each reading by several mistakes at once, shape (n), where it is not the sum of the single ones. */
	readonly together?: (mistakes: readonly number[]) => Float64Array;
};

/** A set of mistakes, with or without a moved master volume. */
export type Scenario = {
	/** Indices of the mistakes, ascending. */
	readonly mistakes: readonly number[];
	readonly hasMaster: boolean;
	/** The shift that fits best, dB; 0 without one. */
	readonly masterDb: number;
	readonly masterSigmaDb: number;
	readonly chiSquare: number;
	readonly logPosterior: number;
};

const mistakesAtMost = 5;
const beamWidth = 16;
/** Scenarios e^9 times less probable than the best are let go. */
const keptWithin = 9;
/** A moved master volume: how often, and how far, as a standard deviation in dB. Common practice, no source. */
const masterShare = 0.1;
const masterSpreadDb = 6;
/** A change smaller than this does not count as touching a reading, dB. */
const touchDb = 0.05;

export const touches = (effect: Float64Array, index: number) => Math.abs(effect[index]!) >= touchDb;

function judge(
	evidence: Evidence,
	mistakes: readonly number[],
	effect: Float64Array,
	hasMaster: boolean,
): Scenario {
	let square = 0;
	let sum = 0;
	let weights = 0;
	for (const [index, residual] of evidence.residuals.entries()) {
		const weight = 1 / evidence.sigmas[index]! ** 2;
		const left = residual - effect[index]!;
		square += weight * left * left;
		sum += weight * left;
		weights += weight;
	}

	const prior = mistakes.reduce((total, mistake) => total + evidence.logPriors[mistake]!, 0);
	if (!hasMaster) {
		const logPosterior = prior + Math.log(1 - masterShare) - square / 2;
		return {mistakes, hasMaster, masterDb: 0, masterSigmaDb: 0, chiSquare: square, logPosterior};
	}

	// The shift integrated out over its normal prior; Sherman and Morrison (1950) for the one common term.
	const precision = weights + 1 / masterSpreadDb ** 2;
	const chiSquare = square - (sum * sum) / precision;
	const occam = -Math.log(1 + masterSpreadDb ** 2 * weights) / 2;
	return {
		mistakes,
		hasMaster,
		masterDb: sum / precision,
		masterSigmaDb: 1 / Math.sqrt(precision),
		chiSquare,
		logPosterior: prior + Math.log(masterShare) + occam - chiSquare / 2,
	};
}

/** Whether two mistakes change a reading that only one entry can have changed, or one where what they do must be worked out anew. */
function overlap(
	a: Float64Array,
	b: Float64Array,
	isSingle: readonly boolean[],
): 'none' | 'barred' | 'together' {
	let found: 'none' | 'together' = 'none';
	for (let index = 0; index < a.length; index++) {
		if (!touches(a, index) || !touches(b, index)) continue;
		if (isSingle[index]) return 'barred';
		found = 'together';
	}

	return found;
}

/**
The sets of mistakes that explain a round best, by Bayes' rule: how well they fit, and how often they happen.

Searched by adding one mistake at a time to the best sets so far; without any mistake and with a moved master volume
alone are always among them.

@returns Best first, each within e⁻⁹ of the best.
@see Jaynes, Probability Theory (2003), chapter 20, for comparing models by their evidence.
*/
export function scenarios(evidence: Evidence): Scenario[] {
	const nothing = new Float64Array(evidence.residuals.length);
	const found = new Map<string, Scenario>();
	type Branch = {readonly mistakes: readonly number[]; readonly effect: Float64Array; readonly score: number};
	const consider = (mistakes: readonly number[], effect: Float64Array): Branch => {
		const both = [judge(evidence, mistakes, effect, false), judge(evidence, mistakes, effect, true)];
		for (const scenario of both) found.set(`${mistakes.join(',')} ${scenario.hasMaster}`, scenario);
		return {mistakes, effect, score: Math.max(...both.map(({logPosterior}) => logPosterior))};
	};

	let beam = [consider([], nothing)];
	let best = beam[0]!.score;
	for (let size = 1; size <= mistakesAtMost; size++) {
		const next = new Map<string, Branch>();
		for (const {mistakes, effect} of beam) {
			for (const [candidate, added] of evidence.effects.entries()) {
				if (mistakes.some(mistake => evidence.entries[mistake] === evidence.entries[candidate])) continue;
				const meeting = overlap(effect, added, evidence.isSingle);
				if (meeting === 'barred') continue;
				const all = [...mistakes, candidate].sort((a, b) => a - b);
				const key = all.join(',');
				if (next.has(key)) continue;
				const sum =
					meeting === 'together' && evidence.together
						? evidence.together(all)
						: effect.map((value, index) => value + added[index]!);
				next.set(key, consider(all, sum));
			}
		}

		beam = [...next.values()].sort((a, b) => b.score - a.score).slice(0, beamWidth);
		const top = beam[0]?.score ?? Number.NEGATIVE_INFINITY;
		// One mistake more that does not help at all ends the search; two at once may still explain what one does not.
		if (top < best - keptWithin) break;
		best = Math.max(best, top);
	}

	return [...found.values()]
		.filter(({logPosterior}) => logPosterior >= best - keptWithin)
		.sort((a, b) => b.logPosterior - a.logPosterior);
}
