import type {SlipCandidate} from './candidate.ts';
import type {Explanation, Finding} from './proofResult.ts';
import {type Evidence, type Scenario, touches} from './scenarios.ts';

/** Explanations with less of the probability are not worth a word, unless they fit as well. */
const leastShare = 0.02;
/** χ² this close to the best fits alike. */
const alikeWithin = 1;
/** Within this of χ², readings do not decide between two explanations: 95 % for one degree of freedom. */
const rivalWithin = 3.84;
const shownAtMost = 6;

/** The evidence, with the residual beyond which each reading is missed, dB. */
export type Judged = Evidence & {readonly limits: readonly number[]};

type Weighted = Scenario & {readonly share: number};

/** Readings that one mistake or several link, as sets of indices that do not overlap. */
function components(scenarios: readonly Weighted[], evidence: Judged): Array<Set<number>> {
	let groups: Array<Set<number>> = [];
	const used = new Set(
		scenarios.filter(({share}) => share >= leastShare / 4).flatMap(({mistakes}) => mistakes),
	);
	for (const mistake of used) {
		const touched = new Set(
			[...evidence.residuals.keys()].filter(index => touches(evidence.effects[mistake]!, index)),
		);
		const [meeting, apart] = [
			groups.filter(group => [...touched].some(index => group.has(index))),
			groups.filter(group => ![...touched].some(index => group.has(index))),
		];
		groups = [...apart, new Set([...touched, ...meeting.flatMap(group => [...group])])];
	}

	return groups;
}

function explanationsOf(
	group: ReadonlySet<number>,
	scenarios: readonly Weighted[],
	all: readonly SlipCandidate[],
	evidence: Judged,
) {
	const inGroup = (mistake: number) => [...group].some(index => touches(evidence.effects[mistake]!, index));
	const sets = new Map<string, {mistakes: number[]; share: number; chiSquare: number}>();
	for (const scenario of scenarios) {
		const mistakes = scenario.mistakes.filter(inGroup);
		// Delays off by neighbouring amounts are one explanation, told by its best amount.
		const key = mistakes
			.map(mistake =>
				all[mistake]!.mistake.code === 'slip-sub-delay'
					? `delay ${all[mistake]!.mistake.about.join()}`
					: mistake,
			)
			.join('|');
		const set = sets.get(key);
		if (set) {
			set.share += scenario.share;
			set.chiSquare = Math.min(set.chiSquare, scenario.chiSquare);
		} else sets.set(key, {mistakes, share: scenario.share, chiSquare: scenario.chiSquare});
	}

	return [...sets.values()].sort((a, b) => b.share - a.share);
}

/**
Groups what the search found by the readings concerned, and names every explanation that fits alike.

@param sorted - Scenarios, best first.
@param shiftDb - The moved master volume that was taken out of the residuals.
*/
export function findingsOf(
	sorted: readonly Scenario[],
	all: readonly SlipCandidate[],
	evidence: Judged,
	keys: readonly string[],
	shiftDb: number,
): Finding[] {
	const total = sorted.reduce(
		(sum, {logPosterior}) => sum + Math.exp(logPosterior - sorted[0]!.logPosterior),
		0,
	);
	const weighted = sorted.map(scenario => ({
		...scenario,
		share: Math.exp(scenario.logPosterior - sorted[0]!.logPosterior) / total,
	}));
	return components(weighted, evidence).flatMap((group): Finding[] => {
		const sets = explanationsOf(group, weighted, all, evidence);
		const nothing = sets.find(({mistakes}) => mistakes.length === 0);
		const claims = sets.filter(({mistakes}) => mistakes.length > 0);
		const isMissed = [...group].some(
			index => Math.abs(evidence.residuals[index]! - shiftDb) > evidence.limits[index]!,
		);
		// Readings that are met are not drawn into a finding by chance, unless it is beyond doubt that something is wrong.
		if (claims.length === 0 || (nothing?.share ?? 0) > (isMissed ? 0.5 : 0.05)) return [];
		const best = claims[0]!;
		const bestFit = Math.min(...claims.map(({chiSquare}) => chiSquare));
		const named = claims
			.filter(
				({share, chiSquare, mistakes}) =>
					share >= leastShare ||
					(chiSquare <= bestFit + alikeWithin && mistakes.length <= best.mistakes.length + 1),
			)
			.slice(0, shownAtMost);
		const isFarAbove = (mistake: number) =>
			[...group].some(index => {
				const size = Math.abs(evidence.residuals[index]! - shiftDb);
				return touches(evidence.effects[mistake]!, index) && size >= Math.max(1, 3 * evidence.sigmas[index]!);
			});
		const isKnown = (mistakes: readonly number[]) =>
			mistakes.every(mistake => all[mistake]!.mistake.code !== 'slip-unexplained');
		// How often a mistake happens may choose between two that fit alike, but makes neither certain.
		const hasRival = (own: (typeof named)[number]) =>
			claims.some(
				other =>
					other !== own &&
					isKnown(other.mistakes) &&
					// The same with something harmless besides is no other explanation.
					!own.mistakes.every(mistake => other.mistakes.includes(mistake)) &&
					other.chiSquare <= own.chiSquare + rivalWithin,
			);
		const trustOf = (own: (typeof named)[number]): Explanation['trust'] => {
			const {mistakes, share} = own;
			if (share >= 0.95 && isKnown(mistakes) && mistakes.every(isFarAbove) && !hasRival(own))
				return 'certain';
			return share >= 0.5 ? 'likely' : 'possible';
		};

		return [
			{
				readings: [...group].sort((a, b) => a - b).map(index => keys[index]!),
				explanations: named.map(set => ({
					mistakes: set.mistakes.map(mistake => all[mistake]!.mistake),
					likelihood: set.share,
					chiSquare: set.chiSquare,
					trust: trustOf(set),
				})),
			},
		];
	});
}
