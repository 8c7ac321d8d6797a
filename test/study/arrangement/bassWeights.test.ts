import {expect, test} from 'vitest';
import {bassWeights, responseInto, scratchFor} from '../../../source/study/arrangement/bassWeights.ts';
import {bassFrequenciesHertz} from '../../../source/study/room/bass.ts';
import {modalResponse, modalWeights} from '../../../source/study/room/modalResponse.ts';
import {roomModes} from '../../../source/study/room/modes.ts';

const modes = roomModes({kind: 'box', widthMetres: 4.7, lengthMetres: 6.3, heightMetres: 2.5}, 300, 343);
const change = (n: number) => ({frequency: 1 + 0.02 * Math.sin(n), damping: 1 + 0.2 * Math.cos(n)});

// The plain sum over all modes is the reference (its own tests hold it against sums of images).
test('far modes by interpolation give what the plain sum over all modes gives', () => {
	const plain = modalWeights(modes, bassFrequenciesHertz, 0.5, 343, change);
	const fast = bassWeights(modes, bassFrequenciesHertz, 0.5, 343, change);
	expect(fast.lowModes).toBeLessThan(modes.modes.length / 2);
	for (const [from, to] of [
		[
			[0.3, 0.3, 0.2],
			[2.4, 4, 1.1],
		],
		[
			[4.4, 3, 0.2],
			[1.7, 4, 1.1],
		],
	] as const) {
		const [source, receiver] = [modes.at(from)!, modes.at(to)!];
		const whole = modalResponse(plain, source, receiver);
		const real = new Float64Array(bassFrequenciesHertz.length);
		const imaginary = new Float64Array(real.length);
		responseInto(fast, [source, receiver], scratchFor(source.length), [real, imaginary], 0);
		// The far modes are some part of a sum of order one: an error of 1e-4 of them is far below a hundredth of a decibel.
		for (let f = 0; f < real.length; f++) {
			expect(Math.abs(real[f]! - whole.real[f]!)).toBeLessThan(1e-3);
			expect(Math.abs(imaginary[f]! - whole.imaginary[f]!)).toBeLessThan(1e-3);
		}
	}
});
