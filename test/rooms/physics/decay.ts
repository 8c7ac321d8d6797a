import {type Box, octaves, type Point} from './box.ts';
import {axesOf, eachImage} from './images.ts';

const binSeconds = 0.002;

/**
Reverberation time of the images' energy by octave, seconds: the line from −5 to −25 dB of the backward integral,
extended to 60 dB.

@see ISO 3382-2, T20; Schroeder's integration.
*/
export function reverberationTimes(
	box: Box,
	source: Point,
	receiver: Point,
	bands: readonly number[],
): number[] {
	const bins = Math.ceil(box.longestSeconds / binSeconds) + 1;
	const energies = bands.map(() => new Float64Array(bins));
	const axes = axesOf(box, source, receiver, bands);
	const [xs, ys, zs] = axes;
	eachImage(box, axes, (metres, x, y, z) => {
		const bin = Math.floor(metres / box.speedOfSound / binSeconds);
		for (let band = 0; band < bands.length; band++) {
			const gain = (xs.factors[band]![x]! * ys.factors[band]![y]! * zs.factors[band]![z]!) / metres;
			energies[band]![bin]! += gain * gain;
		}
	});
	return energies.map(timeOf);
}

function timeOf(energy: Float64Array): number {
	const left = Float64Array.from(energy);
	for (let bin = left.length - 2; bin >= 0; bin--) left[bin]! += left[bin + 1]!;
	const points: Array<readonly [number, number]> = [];
	for (const [bin, value] of left.entries()) {
		const level = 10 * Math.log10(value / left[0]!);
		if (level <= -5 && level >= -25) points.push([bin * binSeconds, level]);
	}

	const mean = (of: 0 | 1) => points.reduce((sum, point) => sum + point[of], 0) / points.length;
	const [time, level] = [mean(0), mean(1)];
	let above = 0;
	let below = 0;
	for (const [x, y] of points) {
		above += (x - time) * (y - level);
		below += (x - time) ** 2;
	}

	return (-60 * below) / above;
}

/**
Walls that give a wanted reverberation time in every octave.

@param shares - By octave, then wall: how much one wall absorbs against the others, any positive numbers. Amplitude
reflection factors become e^(−scale·share), with a scale for each octave.
@param longestSeconds - Images later than this are left out of the box that is returned.
*/
export function wallsFor(
	wanted: {
		readonly sizeMetres: Point;
		readonly speedOfSound: number;
		readonly shares: readonly (readonly number[])[];
		readonly seconds: number;
	},
	longestSeconds = 0.75 * wanted.seconds + 0.03,
): Box {
	const {sizeMetres, speedOfSound, shares, seconds} = wanted;
	const at = (parts: readonly number[]) =>
		parts.map((part, axis) => part * sizeMetres[axis]!) as [number, number, number];
	const source = at([0.23, 0.14, 0.31]);
	const receiver = at([0.56, 0.63, 0.44]);
	const boxWith = (scales: readonly number[], longest: number): Box => ({
		sizeMetres,
		speedOfSound,
		longestSeconds: longest,
		reflections: shares.map((walls, octave) => walls.map(share => Math.exp(-scales[octave]! * share))),
	});
	const [width, length, height] = sizeMetres;
	const perMetre = 1 / width + 1 / length + 1 / height;
	// Where it starts does not matter much: the exponent of the decay is nearly proportional to the scale.
	const scales = shares.map(walls => {
		const mean = walls.reduce((sum, share) => sum + share, 0) / walls.length;
		return (6 * Math.LN10) / 2 / (seconds * speedOfSound * perMetre * 0.5 * mean);
	});
	for (let round = 0; round < 4; round++) {
		const times = reverberationTimes(
			boxWith(scales, 0.6 * seconds + 0.03),
			source,
			receiver,
			octaves.map((_, octave) => octave),
		);
		for (const [octave, time] of times.entries()) scales[octave]! *= time / seconds;
	}

	return boxWith(scales, longestSeconds);
}
