import {curveLevelAt, type TextCurve} from './curveText.ts';
import type {HeardLine} from './heardPlaying.ts';
import {responseFrequencies} from './responses.ts';

/** A line with the microphone's own response taken off its levels; times and signs are left as they are. */
export function withoutMicrophone(line: HeardLine, microphone: TextCurve): HeardLine {
	const frequencies = responseFrequencies();
	const sizes = frequencies.map(hertz => 10 ** (-curveLevelAt(microphone, hertz) / 20));
	const {response} = line;
	const meanOver = (from: number, to: number) => {
		const inBand = frequencies.filter(hertz => hertz >= from && hertz <= to);
		return inBand.reduce((sum, hertz) => sum + curveLevelAt(microphone, hertz), 0) / inBand.length;
	};
	const bass = meanOver(28.2, 112.2);
	return {
		...line,
		...(line.levelDb !== undefined && {levelDb: line.levelDb - (line.isSub ? bass : meanOver(355, 2818))}),
		bassLevelDb: line.bassLevelDb - bass,
		response: {
			real: response.real.map((value, index) => value * sizes[index]!),
			imaginary: response.imaginary.map((value, index) => value * sizes[index]!),
		},
	};
}
