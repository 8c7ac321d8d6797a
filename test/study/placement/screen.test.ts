import {expect, test} from 'vitest';
import {
	designViewingDistance,
	distanceForWidth,
	screenReport,
	widthForDistance,
} from '../../../source/study/placement/screen.ts';
import {ear, placedAt, screenAhead} from '../survey/exampleNetwork.ts';

test('screenReport is none without a screen, its size, or its place', () => {
	const {profile, result} = placedAt({sofa: ear, screen: screenAhead});
	expect(screenReport(profile, result)).toBeUndefined();
	expect(screenReport({...profile, screen: {}}, result)).toBeUndefined();
	const unplaced = placedAt({sofa: ear});
	expect(screenReport({...unplaced.profile, screen: {widthMetres: 2}}, unplaced.result)).toBeUndefined();
});

// ITU-R BT.2022 and BT.500: two adjacent pixels subtend one arc-minute. Definition as published, table recomputed to the
// digits shown; the recommendation itself rounds to 4.8, 3.2, 1.6 and 0.8 picture heights (from memory).
test.each([
	[480, 7.162, 14.15],
	[576, 5.9683, 16.94],
	[720, 4.7746, 21.09],
	[1080, 3.1831, 31.21],
	[2160, 1.5915, 58.37],
	[4320, 0.7958, 96.33],
])(
	'designViewingDistance of %i lines is %f heights, which is %f° of a 16:9 picture',
	(lines, heights, angle) => {
		expect(Math.abs(designViewingDistance(lines) - heights)).toBeLessThan(6e-4);
		const distance = distanceForWidth(16 / 9, angle);
		expect(Math.abs(distance - heights)).toBeLessThan(0.005);
	},
);

// Distance over width for an angle: SMPTE EG 18-1994 (30°; 1.6264 diagonals as an encyclopaedia gives them, the guideline was not opened), ITU-R BS.775-3 (33° at 3 H,
// 48° at 2 H); the table is recomputed to four decimals.
test.each([
	[26, 2.1657, 1.8876],
	[30, 1.866, 1.6264],
	[33, 1.688, 1.4712],
	[36, 1.5388, 1.3412],
	[40, 1.3737, 1.1973],
	[43.4, 1.2564, 1.0951],
	[48, 1.123, 0.9788],
	[60, 0.866, 0.7548],
])('distanceForWidth at %f° is %f widths or %f diagonals of 16:9', (angle, overWidth, overDiagonal) => {
	expect(Math.abs(distanceForWidth(1, angle) - overWidth)).toBeLessThan(6e-5);
	expect(Math.abs(distanceForWidth(16 / Math.hypot(16, 9), angle) - overDiagonal)).toBeLessThan(6e-5);
	expect(widthForDistance(distanceForWidth(2.3, angle), angle)).toBeCloseTo(2.3, 12);
});

test('screenReport sees three picture heights as the 33° of BS.775 and a seat aside as narrower', () => {
	const height = 1.2;
	const {profile, result} = placedAt(
		{
			sofa: [2.5, 0.05 + 3 * height, 1.1],
			chair: [4, 0.05 + 3 * height, 1.1],
			screen: screenAhead,
			FC: [2.5, 0.3, 0.4],
		},
		{screen: {widthMetres: (height * 16) / 9, heightMetres: height}},
	);
	const report = screenReport(profile, result)!;
	const [sofa, chair] = report.seats;
	// 2·atan(16/9/6) = 33.01°.
	expect(sofa!.horizontalDegrees).toBeCloseTo(33.01, 2);
	expect(sofa!.distanceInHeights).toBeCloseTo(3, 4);
	expect(sofa!.meets.map(({degrees}) => degrees)).toEqual([30, 31.2, 33]);
	expect(chair!.horizontalDegrees).toBeLessThan(sofa!.horizontalDegrees);
	expect(chair!.offNormalDegrees).toBeCloseTo((Math.atan(1.5 / 3.6) * 180) / Math.PI, 3);
	expect(report.centre).toMatchObject({where: 'below'});
	expect(report.centre!.aboveEarMetres).toBeCloseTo(-0.7, 5);
});
