import {expect, test} from 'vitest';
import type {MeterReading, Profile} from '../../../../source/profile/types.ts';
import {backgroundAt} from '../../../../source/study/calibration/levels/backgroundAt.ts';

const quiet = (own: Partial<MeterReading>): MeterReading => ({
	source: 'background',
	seat: 'sofa',
	decibels: 40,
	weighting: 'C',
	round: 'first',
	...own,
});
const profile = (...meter: MeterReading[]) => ({meter}) as Profile;

test('backgroundAt is the energy mean of the readings at the seat with the weighting', () => {
	const read = profile(
		quiet({decibels: 80}),
		quiet({decibels: 90}),
		quiet({decibels: 60, seat: 'stool'}),
		quiet({decibels: 60, weighting: 'A'}),
		quiet({decibels: 60, setAside: true}),
		quiet({decibels: 60, source: 'FL'}),
	);
	// The mean of 80 and 90 dB on energy is 87.404 dB.
	expect(backgroundAt(read, 'sofa', 'C')).toBeCloseTo(87.404, 3);
});

test('backgroundAt knows nothing where nobody read it', () => {
	expect(backgroundAt(profile(), 'sofa', 'C')).toBeUndefined();
});
