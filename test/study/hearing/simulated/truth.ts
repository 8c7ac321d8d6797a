import {type HeardResponse, responseFrequencies} from '../../../../source/study/hearing/responses.ts';
import {distanceOf, type Setup, simulated, speed} from './setup.ts';

const frequencies = responseFrequencies();

/** A true response at one of the frequencies kept. */
type TruePoint = {readonly index: number; readonly real: number; readonly imaginary: number};

/** True response at the frequencies kept, by the definition of the transform, against the front left's first sound. */
export function truth(
	setup: Setup,
	channel: string,
	fromHertz: number,
	toHertz: number,
	gain: number,
): TruePoint[] {
	const impulse = simulated(setup).responses.get(channel)!;
	const zero = distanceOf('FL') / speed;
	return [...frequencies.keys()]
		.filter(index => frequencies[index]! >= fromHertz && frequencies[index]! <= toHertz)
		.map(index => {
			const step = 2 * Math.PI * frequencies[index]!;
			let [real, imaginary] = [0, 0];
			for (let n = 0; n < impulse.length; n += 1) {
				const angle = step * (n / 48_000 - zero);
				real += gain * impulse[n]! * Math.cos(angle);
				imaginary -= gain * impulse[n]! * Math.sin(angle);
			}

			return {index, real, imaginary};
		});
}

/** Error of a response against the truth, dB below the truth's own level. */
export function errorDb({real, imaginary}: HeardResponse, points: readonly TruePoint[]): number {
	let [off, all] = [0, 0];
	for (const point of points) {
		off += (real[point.index]! - point.real) ** 2 + (imaginary[point.index]! - point.imaginary) ** 2;
		all += point.real ** 2 + point.imaginary ** 2;
	}

	return 10 * Math.log10(off / all);
}
