import {expect, test} from 'vitest';
import {modalResponse, modalWeights} from '../../../source/study/room/modalResponse.ts';
import {roomModes} from '../../../source/study/room/modes.ts';

// Computed outside this project, once as a long modal series and once as a sum of images, which agree to 1e-5:
// 6 × 4 × 2.5 m (length, width, height), source at 0.3/0.4/0.3 m, receiver at 3.6/2.1/1.2 m, 343 m/s, T = 0.4 s.
const expected = [
	[20, 8.164],
	[28.5833, 8.242],
	[35, -8.15],
	[42.875, -3.698],
	[57.1667, 9.556],
	[70, -1.566],
	[80, -5.7],
] as const;

test('the damped modal sum of a box is that of two outside computations', () => {
	const modes = roomModes({kind: 'box', widthMetres: 4, lengthMetres: 6, heightMetres: 2.5}, 900, 343);
	const weights = modalWeights(
		modes,
		expected.map(([hertz]) => hertz),
		0.4,
		343,
	);
	const {real, imaginary} = modalResponse(weights, modes.at([0.4, 0.3, 0.3])!, modes.at([2.1, 3.6, 1.2])!);
	for (const [f, [, level]] of expected.entries()) {
		// The series is cut at 900 Hz: what is left out adds some hundredths of a decibel, more in a hole.
		expect(Math.abs(20 * Math.log10(Math.hypot(real[f]!, imaginary[f]!)) - level)).toBeLessThan(0.15);
	}
});

test('source and receiver may be exchanged', () => {
	const shape = {
		kind: 'ceiling',
		widthMetres: 4.4,
		lengthMetres: 5.2,
		across: 0,
		places: [
			{atMetres: 0, heightMetres: 2.6},
			{atMetres: 4.4, heightMetres: 1.7},
		],
	} as const;
	const modes = roomModes(shape, 160, 343);
	const weights = modalWeights(modes, [40, 63, 80], 0.3, 343);
	const [a, b] = [modes.at([0.5, 0.3, 0.2])!, modes.at([2.4, 3.5, 1.1])!];
	const [there, back] = [modalResponse(weights, a, b), modalResponse(weights, b, a)];
	for (let f = 0; f < 3; f++) expect(there.real[f]).toBeCloseTo(back.real[f]!, 12);
});
