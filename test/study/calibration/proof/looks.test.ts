import fc from 'fast-check';
import {expect, test} from 'vitest';
import {judgeLooks} from '../../../../source/study/calibration/proof/looks.ts';

// Of a limit of 2 dB: met at once within 1.3, missed by two looks beyond 3, by the mean after four; 6 apart is another setting.
test.each([
	['one look clearly within', [0.4], 'met', 0.4],
	['one look that is not asks for another', [1.5], 'again', 1.5],
	['one look beyond asks for another', [4.6], 'again', 4.6],
	['two clearly beyond by their mean', [3.6, 2.6], 'missed', 3.1],
	['two that are not clear ask once more', [2.6, 2.2], 'again', 2.4],
	['beyond on both sides cancels', [2.6, -2.2], 'met', 0.2],
	['a second look within clears the first', [2, 0.2], 'met', 1.1],
	['four looks settle it by their mean: beyond', [2.6, 2.2, 1.6, 1.8], 'missed', 2.05],
	['four looks settle it by their mean: within', [2.6, 2.2, 1.5, 1.6], 'met', 1.975],
	['a reading after a mend replaces what was missed', [-3.1, -3.2, 0.1], 'met', 0.1],
	['a reading after a mend before it was settled replaces it too', [-6.5, 0.1], 'met', 0.1],
	['a smaller mend is met in the end', [-4, 0, 0, 0], 'met', -1],
	['a round gone wrong later is missed', [0.1, 3.2, 3.1], 'missed', 3.15],
] as const)('`judgeLooks`: %s', (_, residuals, verdict, residualDb) => {
	const found = judgeLooks(residuals, 2);
	expect(found.verdict).toBe(verdict);
	expect(found.residualDb).toBeCloseTo(residualDb, 12);
});

test('`judgeLooks` never meets what is no number, and never misses by one look', () => {
	expect(judgeLooks([Number.NaN], 2).verdict).toBe('again');
	expect(judgeLooks([1], Number.NaN).verdict).toBe('again');
	fc.assert(
		fc.property(fc.double({noNaN: true}), residual => judgeLooks([residual], 2).verdict !== 'missed'),
	);
});

test('`judgeLooks` has an answer after four looks, whatever they were', () => {
	const looks = fc.array(fc.double({min: -5, max: 5, noNaN: true}), {minLength: 4, maxLength: 4});
	fc.assert(
		fc.property(looks, residuals => {
			const {verdict, count} = judgeLooks(residuals, 2);
			// Fewer than four count where the row was settled before, or far apart: those may ask again.
			return verdict !== 'again' || count < 4;
		}),
	);
});
