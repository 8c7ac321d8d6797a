import fc from 'fast-check';
import {expect, test} from 'vitest';
import {judgeLooks} from '../../../../source/study/calibration/proof/looks.ts';

test.each([
	['one look within', [0.4], 'met', 0.4],
	['one look beyond asks for another', [2.6], 'again', 2.6],
	['two beyond on the same side', [2.6, 2.2], 'missed', 2.4],
	['beyond on both sides asks once more', [2.6, -2.2], 'again', -2.2],
	['a second look within clears the first', [2.6, 0.2], 'met', 0.2],
	['a reading after a mend replaces those before it', [-3, -3.2, 0.1], 'met', 0.1],
	['a round gone wrong later is missed', [0.1, 2.9, 3.1], 'missed', 3],
] as const)('`judgeLooks`: %s', (_, residuals, verdict, residualDb) => {
	const found = judgeLooks(residuals, 1.75);
	expect(found.verdict).toBe(verdict);
	expect(found.residualDb).toBeCloseTo(residualDb, 12);
});

test('`judgeLooks` never meets what is no number, and never misses by one look', () => {
	expect(judgeLooks([Number.NaN], 1.75).verdict).toBe('again');
	expect(judgeLooks([1], Number.NaN).verdict).toBe('again');
	fc.assert(
		fc.property(fc.double({noNaN: true}), residual => judgeLooks([residual], 1.75).verdict !== 'missed'),
	);
});
