import {expect, test} from 'vitest';
import {tapeSigmaMetres} from '../../../source/study/survey/sigma.ts';

test('tapeSigmaMetres takes a stated uncertainty as it is', () => {
	expect(tapeSigmaMetres({from: 'FL', to: 'sofa', metres: 3, sigmaMetres: 0.02})).toBe(0.02);
});

test('tapeSigmaMetres combines placing, scale and step', () => {
	// √(2² + 3² + 6.35²/12) mm for 3 m read to a quarter inch: √(4 + 9 + 3.360) = 4.0448 mm.
	const sigma = tapeSigmaMetres({from: 'FL', to: 'sofa', metres: 3}, {tapeStepMetres: 0.00635});
	expect(sigma).toBeCloseTo(0.0040448, 7);
	// The finest step that is assumed adds √(1/12) mm.
	expect(tapeSigmaMetres({from: 'FL', to: 'floor', metres: 0})).toBeCloseTo(
		Math.hypot(0.002, 0.001 / Math.sqrt(12)),
		12,
	);
});
