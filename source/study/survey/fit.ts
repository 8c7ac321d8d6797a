import type {SurveyNetwork} from './network.ts';
import type {Observation} from './observations.ts';
import {
	adjustedCovariance,
	criticalValueOf,
	leastRedundancy,
	type ReadingTest,
	testCorrelation,
	testsOf,
} from './reliability.ts';
import {costAmongRepeats, type Joined} from './repeats.ts';
import {type Settled, settle} from './settle.ts';

/** Readings adjusted together, and the test of each. */
export type Fit = {
	readonly settled: Settled;
	readonly joined: readonly Joined[];
	/** For each of `joined` its members' tests. */
	readonly tests: readonly ReadingTest[][];
	/** Standardised residual above which a reading cannot be right. */
	readonly critical: number;
	/** Half the sum of squares of all readings, in sigmas. */
	readonly cost: number;
};

/** Lower by more than this, half a sum of squares, is a better solution and not the same one again. */
const betterCost = 1;

/** Adjusts from the first start and, if that fits badly, from the others; keeps the best. */
export function fitFrom(
	network: SurveyNetwork,
	joined: readonly Joined[],
	starts: ReadonlyArray<() => Float64Array>,
): Fit {
	const observations = joined.map(({observation}) => observation);
	let settled: Settled | undefined;
	for (const start of starts) {
		// What fits all its readings cannot be bettered.
		if (settled && settled.solved.cost <= observations.length) break;
		const next = settle(network, observations, start());
		if (!settled || next.solved.cost < settled.solved.cost - betterCost) settled = next;
	}

	const {solved} = settled!;
	const tests = testsOf(solved.rows, joined);
	let tested = 0;
	for (const row of tests) for (const {redundancy} of row) if (redundancy >= leastRedundancy) tested++;
	return {
		settled: settled!,
		joined,
		tests,
		critical: criticalValueOf(tested),
		cost: solved.cost + costAmongRepeats(joined),
	};
}

/** A reading of a fit with its test. */
export type Tested = {readonly observation: Observation; readonly test: ReadingTest};

/** Every reading with its test, in the order of the rows. */
export function testedOf({joined, tests}: Fit): Tested[] {
	return joined.flatMap(({members}, row) =>
		members.map((observation, place) => ({observation, test: tests[row]![place]!})),
	);
}

/** Readings whose tests correlate more than this cannot be told apart. */
const inseparable = 0.9;

/** Readings whose test fails as well and cannot be told from that of `one`. */
export function inseparableFrom(fit: Fit, one: Tested, failing: readonly Tested[]): Tested[] {
	const {rows} = fit.settled.solved;
	const sigmaOf = ({test}: Tested) => fit.joined[test.row]!.observation.sigmaMetres;
	return failing.filter(other => {
		if (other.observation === one.observation || other.test.redundancy < leastRedundancy) return false;
		const covariance = adjustedCovariance(rows, one.test.row, other.test.row) * sigmaOf(one) * sigmaOf(other);
		const correlation = testCorrelation(
			covariance,
			{sigmaMetres: one.observation.sigmaMetres, redundancy: one.test.redundancy},
			{sigmaMetres: other.observation.sigmaMetres, redundancy: other.test.redundancy},
		);
		return Math.abs(correlation) > inseparable;
	});
}
