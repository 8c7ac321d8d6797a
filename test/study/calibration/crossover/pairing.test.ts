import {expect, test} from 'vitest';
import {
	type AnalogFilter,
	cascade,
	throughFilter,
} from '../../../../source/science/acoustics/filters/analogFilter.ts';
import {boxFilter} from '../../../../source/science/acoustics/filters/box.ts';
import {butterworth} from '../../../../source/science/acoustics/filters/butterworth.ts';
import {linkwitzRiley} from '../../../../source/science/acoustics/filters/linkwitzRiley.ts';
import {filterResponse} from '../../../../source/science/acoustics/filters/response.ts';
import {mainsPath, subModel, subPath} from '../../../../source/study/calibration/crossover/model.ts';
import {gridAbout, judgePairing, subSide} from '../../../../source/study/calibration/crossover/pairing.ts';
import reference from '../../../reference/crossover.json' with {type: 'json'};

/** Both sides as filters. */
function judge(mains: AnalogFilter, sub: AnalogFilter, low: AnalogFilter, hertz: number, canInvert: boolean) {
	const grid = gridAbout(hertz);
	return judgePairing(filterResponse(mains, grid), subSide(sub, low, grid), hertz, canInvert, 1);
}

// Brute force with scipy 1.10.1 on a delay grid 17 times finer; the search here goes in 1/480 of a period, so that
// the ripple at its best step may be larger by 0.03 dB and the delay off by a step either way.
test.each(reference)(
	'judgePairing equals brute force with scipy for a $box box at $crossoverHertz Hz',
	entry => {
		const box = boxFilter({
			lowLimitHertz: entry.lowLimitHertz,
			lowLimitDropDb: entry.lowLimitDropDb as 3 | 6 | 10,
			box: entry.box as 'closed' | 'vented',
			totalQ: entry.totalQ,
		});
		const sub = subModel([
			{
				box: 'vented',
				lowLimitHertz: entry.subLowLimitHertz ?? undefined,
				upperLimitHertz: entry.subUpperLimitHertz ?? undefined,
			},
		]);
		const management = {
			highPass: entry.highPass as {kind: 'butterworth'; order: number},
			lowPass: entry.lowPass as {kind: 'butterworth'; order: number},
		};
		const judged = judge(
			mainsPath(box, management, entry.crossoverHertz),
			subPath(sub, management, entry.crossoverHertz),
			entry.subLowLimitHertz === null ? throughFilter : sub.low,
			entry.crossoverHertz,
			false,
		);
		const stepMs = 1000 / entry.crossoverHertz / 480;
		expect(judged.rippleDb).toBeGreaterThan(entry.rippleDb - 1e-3);
		expect(judged.rippleDb).toBeLessThan(entry.rippleDb + 0.03);
		expect(Math.abs(judged.subDelayMs - entry.subDelayMs)).toBeLessThan(1.5 * stepMs);
		expect(Math.abs(judged.toleranceDb - entry.toleranceDb)).toBeLessThan(0.1);
	},
);

test('judgePairing finds the flat sum of a Linkwitz-Riley pair at no delay', () => {
	const judged = judge(linkwitzRiley('high', 4, 80), linkwitzRiley('low', 4, 80), throughFilter, 80, false);
	expect(judged).toMatchObject({subDelayMs: 0, inverted: false});
	expect(judged.rippleDb).toBeLessThan(1e-9);
});

// A closed box of Butterworth alignment behind a second-order Butterworth high-pass at its limit is a fourth-order
// Linkwitz-Riley high-pass: the reason for the usual filters of bass management.
test('judgePairing finds a flat sum where box and high-pass make a Linkwitz-Riley filter together', () => {
	const mains = cascade(butterworth('high', 2, 80), boxFilter({lowLimitHertz: 80, box: 'closed'}));
	const judged = judge(mains, linkwitzRiley('low', 4, 80), throughFilter, 80, false);
	expect(judged.rippleDb).toBeLessThan(1e-6);
});

// Second-order Linkwitz-Riley needs one side inverted (Linkwitz, JAES 24 (1976) 2–8).
test('judgePairing inverts the sub for a second-order Linkwitz-Riley pair where it may', () => {
	const pair = (canInvert: boolean) =>
		judge(linkwitzRiley('high', 2, 80), linkwitzRiley('low', 2, 80), throughFilter, 80, canInvert);
	expect(pair(true)).toMatchObject({inverted: true, subDelayMs: 0});
	expect(pair(true).rippleDb).toBeLessThan(1e-9);
	expect(pair(false).inverted).toBe(false);
	expect(pair(false).rippleDb).toBeGreaterThan(1);
});
