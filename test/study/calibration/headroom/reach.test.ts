import {expect, test} from 'vitest';
import {atDistance, reachAtOneMetre} from '../../../../source/study/calibration/headroom/reach.ts';

test('reachAtOneMetre names what is missing instead of guessing', () => {
	expect(reachAtOneMetre({})).toEqual({missing: ['sensitivity', 'amplifier power', 'impedance']});
	expect(reachAtOneMetre({sensitivityDb: 88, sensitivityFor: '1 W'})).toEqual({missing: ['amplifier power']});
	expect(reachAtOneMetre({sensitivityDb: 88, amplifierWatts: 100, sensitivityFor: '2.83 V'})).toEqual({
		missing: ['impedance'],
	});
});

// Worked by hand: ten times the power is 10 dB, twice is 3.01 dB. 2.83 V is one watt in 8 ohms and two in 4 ohms, so
// that a 4 ohm speaker rated for 2.83 V stands 3.01 dB higher on paper than for one watt.
test.each([
	[{sensitivityDb: 88, sensitivityFor: '1 W', amplifierWatts: 100, impedanceOhms: 4}, 108],
	[{sensitivityDb: 88, sensitivityFor: '2.83 V', amplifierWatts: 100, impedanceOhms: 8}, 108],
	[{sensitivityDb: 88, sensitivityFor: '2.83 V', amplifierWatts: 100, impedanceOhms: 4}, 104.9897],
	[{sensitivityDb: 88, sensitivityFor: '2.83 V', amplifierWatts: 200, impedanceOhms: 4}, 108],
	[{sensitivityDb: 91, amplifierWatts: 50, impedanceOhms: 8}, 107.9897],
] as const)('reachAtOneMetre of %j is %f dB', (data, expected) => {
	expect(reachAtOneMetre(data)).toEqual({decibels: expect.closeTo(expected, 4)});
});

// Distance law of a point source, 6.02 dB a doubling: textbook values 90 dB at 1 m, 83.98 at 2 m, 80.46 at 3 m, 77.96
// at 4 m, 70 at 10 m.
test.each([
	[1, 90],
	[2, 83.9794],
	[3, 80.4576],
	[4, 77.9588],
	[10, 70],
	[0.5, 96.0206],
])('atDistance takes 90 dB at 1 m to its level at %f m', (distanceM, expected) => {
	expect(atDistance(90, distanceM)).toBeCloseTo(expected, 4);
});
