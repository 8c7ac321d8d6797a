import {expect, test} from 'vitest';
import type {Kit, TapeReading} from '../../../source/profile/types.ts';
import {holdingOf} from '../../../source/study/survey/holding.ts';
import {tapeSigmaMetres} from '../../../source/study/survey/sigma.ts';
import {randomFrom} from './nets.ts';

const seats = [{id: 'sofa', name: 'Sofa', reference: true}];
const held = (kit?: Kit, tape: readonly TapeReading[] = []) =>
	holdingOf({seats, tape: [...tape], ...(kit && {kit})});

test('tapeSigmaMetres takes a stated uncertainty as it is', () => {
	expect(tapeSigmaMetres({from: 'FL', to: 'sofa', metres: 3, sigmaMetres: 0.02}, held())).toBe(0.02);
});

test('tapeSigmaMetres combines placing, scale and step', () => {
	// √(2² + 3² + 6.35²/12) mm for 3 m read to a quarter inch: √(4 + 9 + 3.360) = 4.0448 mm.
	const firm = {tapeHeldMetres: {seat: 0, centre: 0, plane: 0}};
	const sigma = tapeSigmaMetres(
		{from: 'FL', to: 'sofa', metres: 3},
		held({tapeStepMetres: 0.00635, ...firm}),
	);
	expect(sigma).toBeCloseTo(0.0040448, 7);
	// The finest step that is assumed adds √(1/12) mm.
	expect(tapeSigmaMetres({from: 'FL', to: 'floor', metres: 0}, held(firm))).toBeCloseTo(
		Math.hypot(0.002, 0.001 / Math.sqrt(12)),
		12,
	);
});

test('tapeSigmaMetres counts how each end is held: an ear worse than a speaker or a wall', () => {
	const kit = {tapeHeldMetres: {seat: 0.03, centre: 0.02, plane: 0.01}};
	const bare = tapeSigmaMetres(
		{from: 'FL', to: 'sofa', metres: 2},
		held({tapeHeldMetres: {seat: 0, centre: 0, plane: 0}}),
	);
	const sigma = (from: string, to: string) => tapeSigmaMetres({from, to, metres: 2}, held(kit));
	expect(sigma('FL', 'sofa')).toBeCloseTo(Math.hypot(bare, 0.03, 0.02), 12);
	expect(sigma('wall:left', 'FL')).toBeCloseTo(Math.hypot(bare, 0.01, 0.02), 12);
	expect(sigma('floor', 'ceiling')).toBeCloseTo(Math.hypot(bare, 0.01, 0.01), 12);
});

/** Sixty pairs of repeats held as badly as `deviation` says, metres. */
function repeats(seed: number, deviation: number): TapeReading[] {
	const {normal} = randomFrom(seed);
	return Array.from({length: 60}, (_, index) => index).flatMap(index =>
		[0, 1].map(() => ({from: `thing${index}`, to: 'sofa', metres: 2 + deviation * normal()})),
	);
}

test('holdingOf learns from repeats how well hands are held, once there are enough', () => {
	const sigma = (tape: readonly TapeReading[]) =>
		tapeSigmaMetres({from: 'FL', to: 'sofa', metres: 2}, held(undefined, tape));
	const assumed = sigma([]);
	expect(sigma(repeats(1, 0.05).slice(0, 20))).toBe(assumed);
	// Sixty differences weigh 22 against the 20 of the assumption: the variance goes half of the way and a little more,
	// so from 14 mm to about √((20·14² + 22·50²)/42) = 37 mm; the median of sixty is known to some 10 %.
	expect(sigma(repeats(2, 0.05))).toBeGreaterThan(0.03);
	expect(sigma(repeats(2, 0.05))).toBeLessThan(0.045);
	expect(sigma(repeats(3, 0.003))).toBeLessThan(0.85 * assumed);
});

test('holdingOf is not misled by a slip among the repeats', () => {
	const tape = repeats(4, 0.014);
	const slip = tape.map((one, index) => (index === 7 ? {...one, metres: one.metres + 0.3048} : one));
	const sigma = (readings: readonly TapeReading[]) =>
		tapeSigmaMetres({from: 'FL', to: 'sofa', metres: 2}, held(undefined, readings));
	expect(Math.abs(sigma(slip) / sigma(tape) - 1)).toBeLessThan(0.03);
});
