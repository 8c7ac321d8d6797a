import {expect, test} from 'vitest';
import {limitOf} from '../../../../source/study/calibration/proof/limits.ts';

const noise = {kind: 'pink', fromHertz: 355, toHertz: 2818} as const;
const tone = {kind: 'tone', hertz: 80} as const;

test('limits follow the signal, whether the place is marked, what is asked for, and what is uncertain', () => {
	expect(limitOf({}, noise, 0.3)).toBe(1.9);
	expect(limitOf({}, tone, 0.3)).toBe(4);
	expect(limitOf({kit: {meterPlaceMarked: true}}, noise, 0.3)).toBe(1.5);
	expect(limitOf({kit: {meterPlaceMarked: true}}, tone, 0.3)).toBe(3);
	expect(limitOf({target: {toleranceDb: 2.5}}, noise, 0.3)).toBe(2.5);
	// 95 % of a normal distribution: 1.96 standard uncertainties.
	expect(limitOf({}, noise, 1.5)).toBeCloseTo(2.94, 12);
});
