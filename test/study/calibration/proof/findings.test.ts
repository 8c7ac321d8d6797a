import {expect, test} from 'vitest';
import {finding} from '../../../../source/profile/finding.ts';
import type {SlipCandidate} from '../../../../source/study/calibration/proof/candidate.ts';
import {findingsOf, type Judged} from '../../../../source/study/calibration/proof/findings.ts';
import {scenarios} from '../../../../source/study/calibration/proof/scenarios.ts';

const candidate = (id: string): SlipCandidate => ({
	mistake: finding('doubt', 'slip-sign', [id], {control: {box: 'receiver', id}, standsDb: -1, shouldDb: 1}),
	change: state => state,
	logPrior: Math.log(0.9),
});

function judge(residual: number, effects: readonly number[]) {
	const evidence: Judged = {
		residuals: [residual, 0, 0],
		sigmas: [0.7, 0.7, 0.7],
		limits: [1, 1, 1],
		entries: effects.map((_, index) => `${index}`),
		isSingle: [true, true, true],
		effects: effects.map(effect => Float64Array.of(effect, 0, 0)),
		logPriors: effects.map(() => Math.log(0.9)),
	};
	const all = effects.map((_, index) => candidate(`m${index}`));
	return findingsOf(scenarios(evidence), all, evidence, ['a', 'b', 'c'], 0);
}

test('`findingsOf` finds nothing where nothing explains the residual', () => {
	expect(judge(3, [])).toEqual([]);
});

test('`findingsOf` calls nothing certain below three sigma, here 2.1 dB, however well it fits', () => {
	const below = judge(2.05, [2.05])[0]!.explanations[0]!;
	expect(below.likelihood).toBeGreaterThan(0.95);
	expect(below.trust).toBe('likely');
	expect(judge(2.15, [2.15])[0]!.explanations[0]!.trust).toBe('certain');
});

test('`findingsOf` names two explanations that fit alike with equal likelihood, neither certain', () => {
	const [found] = judge(6, [6, 6]);
	expect(found!.explanations.map(({likelihood}) => likelihood)).toEqual([
		expect.closeTo(0.5, 2),
		expect.closeTo(0.5, 2),
	]);
	expect(found!.explanations.every(({trust}) => trust !== 'certain')).toBe(true);
});

test('`scenarios` gives the share that Bayes’ rule gives for one mistake against none', () => {
	// ln odds = ln 0.9 + (3/1)²/2 with the mistake fitting exactly and σ = 1; the terms with a master volume apart.
	const sorted = scenarios({
		residuals: [3],
		sigmas: [1],
		entries: ['0'],
		isSingle: [true],
		effects: [Float64Array.of(3)],
		logPriors: [Math.log(0.9)],
	});
	const of = (count: number) =>
		sorted.find(({mistakes, hasMaster}) => mistakes.length === count && !hasMaster)!;
	expect(of(1).logPosterior - of(0).logPosterior).toBeCloseTo(Math.log(0.9) + 4.5, 9);
});
