import fc from 'fast-check';
import {expect, test} from 'vitest';
import {aheadOf, sightlines} from '../../../source/study/placement/angles.ts';
import {adjustNetwork} from '../../../source/study/survey/adjust.ts';
import {ear, placedAt, screenAhead, towards} from '../survey/exampleNetwork.ts';
import {bareProfile} from '../survey/room.ts';

test('sightlines are none when the seat is not measured', () => {
	expect(sightlines(adjustNetwork(bareProfile()), 'sofa')).toEqual([]);
	expect(sightlines(adjustNetwork(bareProfile()), 'nobody')).toEqual([]);
});

test('sightlines give back the direction that a speaker was put in', () => {
	fc.assert(
		fc.property(
			fc.double({min: -179, max: 179, noNaN: true}),
			fc.double({min: -15, max: 60, noNaN: true}),
			(azimuth, elevation) => {
				const {result} = placedAt({sofa: ear, screen: screenAhead, FL: towards(azimuth, elevation, 1.5)});
				const line = sightlines(result, 'sofa').find(({id}) => id === 'FL')!;
				// Readings are kept to a micrometre, seen from 1.5 m: 4e−5°.
				expect(
					Math.abs(line.azimuthDegrees.value - azimuth) * Math.cos((elevation * Math.PI) / 180),
				).toBeLessThan(2e-4);
				expect(Math.abs(line.elevationDegrees.value - elevation)).toBeLessThan(2e-4);
				expect(line.distanceMetres.value).toBeCloseTo(1.5, 5);
			},
		),
		{seed: 3, numRuns: 40},
	);
});

test('sightlines count azimuth from the screen’s centre at every seat', () => {
	const {result} = placedAt({sofa: ear, chair: [4, 3.8, 1.1], screen: screenAhead, FC: [2.5, 0.4, 0.7]});
	const ahead = sightlines(result, 'chair').find(({id}) => id === 'screen')!;
	expect(ahead.azimuthDegrees.value).toBeCloseTo(0, 9);
	// From the chair the screen is at atan(1.5/3.75) = 21.80° left of square, the centre speaker at atan(1.5/3.4) = 23.81°.
	const centre = sightlines(result, 'chair').find(({id}) => id === 'FC')!;
	expect(centre.azimuthDegrees.value).toBeCloseTo(23.806 - 21.801, 2);
});

test('aheadOf falls back to the centre speaker, the fronts, and the wall', () => {
	const known = {sofa: ear, FL: towards(30, 0, 3), FR: towards(-30, 0, 3)};
	expect(aheadOf(placedAt({...known, FC: towards(0, 0, 3)}).result).what).toContain('front centre');
	expect(aheadOf(placedAt(known).result).what).toContain('middle between');
	expect(aheadOf(placedAt({sofa: ear}).result).points).toEqual([]);
});

test('sightlines carry the uncertainty that first order gives', () => {
	// One speaker straight ahead at 3 m, all coordinates independent with sigma s: azimuth sigma is √2·s/3 from speaker and
	// ear across, plus the screen's share; here the axis is the wall, so those two are all.
	const {profile, result} = placedAt({sofa: ear, FL: towards(0, 0, 3)});
	const sigma = (id: string, to: string) => {
		const index = profile.tape!.findIndex(one => one.from === id && one.to === to);
		return result.readings[index]!.sigmaMetres;
	};
	const across = Math.hypot(sigma('sofa', 'wall:left'), sigma('FL', 'wall:left'));
	const line = sightlines(result, 'sofa').find(({id}) => id === 'FL')!;
	expect(line.azimuthDegrees.sigma / ((across / 3) * (180 / Math.PI))).toBeCloseTo(1, 5);
});
