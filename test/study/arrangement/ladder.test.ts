import fc from 'fast-check';
import {expect, test} from 'vitest';
import {type JudgedBass, tellDb} from '../../../source/study/arrangement/judged.ts';
import {advisedRow, ladderRows} from '../../../source/study/arrangement/ladder.ts';
import type {FoundArrangement} from '../../../source/study/arrangement/search.ts';
import type {Vector} from '../../../source/study/survey/vectors.ts';

const seats = [2.3, 1.5, 3.1].map((x, i) => ({id: `seat${i}`, at: [x, 4.2, 1.1] as Vector}));

/** An arrangement whose seats differ by so much in each draw, dB. */
function judgedAt(lifted: number, spreadsDb: readonly number[]): FoundArrangement {
	const draws = spreadsDb.map(spreadDb => ({
		spreadDb,
		flatnessDb: 0,
		outputDb: 0,
		hole: {depthDb: 0, frequencyHertz: 40},
	}));
	const judged: JudgedBass = {
		draws,
		middle: draws[0]!,
		meanDb: spreadsDb.reduce((sum, one) => sum + one, 0) / spreadsDb.length,
		badDb: Math.max(...spreadsDb),
	};
	return {subs: [], rowShiftMetres: 0, lifted, settings: [], judged};
}

const spreads = fc.array(fc.double({min: 0, max: 4, noNaN: true}), {minLength: 20, maxLength: 20});

test('whatever was found, means fall from rung to rung, and no rung is worse than the room as it stands', () => {
	fc.assert(
		fc.property(fc.array(spreads, {minLength: 2, maxLength: 6}), lists => {
			const [now, ...found] = lists.map((list, lifted) => judgedAt(lifted, list));
			const rows = ladderRows({seats}, now!, found);
			const means = [now!, ...rows.map(({arrangement}) => arrangement)].map(({judged}) => judged.meanDb);
			for (const [i, mean] of means.slice(1).entries()) expect(mean).toBeLessThan(means[i]!);
			// What was left out was no better than a rung that lifts no more.
			for (const one of found)
				if (!rows.some(({arrangement}) => arrangement === one)) {
					const below = rows.filter(({arrangement}) => arrangement.lifted < one.lifted);
					const best = Math.min(
						now!.judged.meanDb,
						...below.map(({arrangement}) => arrangement.judged.meanDb),
					);
					// Half of the tenth that is printed.
					expect(one.judged.meanDb).toBeGreaterThan(best - 0.0501);
				}
		}),
	);
});

const even = (spreadDb: number) => Array.from({length: 20}, () => spreadDb);

test('a rung that does as much as the one below is not offered', () => {
	const rows = ladderRows({seats}, judgedAt(0, even(2.4)), [
		judgedAt(1, even(1.4)),
		judgedAt(2, even(1.1)),
		judgedAt(3, even(1.1)),
	]);
	expect(rows.map(({arrangement}) => arrangement.lifted)).toEqual([1, 2]);
});

test('a rung is sure only where the draws tell it from the row above; more is not advised for less', () => {
	const now = judgedAt(0, even(2.4));
	// Better by more than can be told in the mean, but in 13 of 20 draws only.
	const torn = Array.from({length: 20}, (_, i) => (i < 13 ? 0.6 : 1.4));
	const rows = ladderRows({seats}, now, [judgedAt(1, even(1.3)), judgedAt(2, torn)]);
	expect(rows[0]!.againstAbove).toBeUndefined();
	expect(rows[1]!.against!.certainty).toBe('sure');
	expect(rows[1]!.againstAbove!.gainDb).toBeGreaterThan(tellDb);
	expect(rows[1]!.againstAbove!.certainty).toBe('unclear');
	expect(advisedRow(now, rows, seats.length)).toBe(0);
});

test('where nothing is surely better, nothing is advised', () => {
	const now = judgedAt(0, even(1.3));
	const rows = ladderRows({seats}, now, [judgedAt(1, even(1.2)), judgedAt(2, even(1.17))]);
	expect(rows).toHaveLength(1);
	expect(advisedRow(now, rows, seats.length)).toBeUndefined();
});
