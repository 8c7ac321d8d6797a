import {expect, test} from 'vitest';
import {minimumSeparationMetres} from '../../../source/science/acoustics/cableSeparation.ts';

// EN 50174-2:2000, minimum separation in millimetres (no divider, aluminium, steel).
test.each([
	[false, false, 200, 100, 50],
	[false, true, 50, 20, 5],
	[true, false, 30, 10, 2],
	[true, true, 0, 0, 0],
])(
	'minimumSeparationMetres follows the table for mains screened %s, signal screened %s',
	(mains, signal, none, aluminium, steel) => {
		expect(minimumSeparationMetres(mains, signal) * 1000).toBeCloseTo(none, 9);
		expect(minimumSeparationMetres(mains, signal, 'aluminium') * 1000).toBeCloseTo(aluminium, 9);
		expect(minimumSeparationMetres(mains, signal, 'steel') * 1000).toBeCloseTo(steel, 9);
	},
);
