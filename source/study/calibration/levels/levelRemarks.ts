import {largeWeightingDb} from '../../../profile/practice.ts';
import type {Weighting} from '../../../profile/types.ts';
import type {BackgroundCorrection} from '../../../science/acoustics/background.ts';
import type {TestSpectrum} from '../../../science/acoustics/band.ts';
import type {Remark} from '../result.ts';
import {farthestFromRest} from '../timing/distances.ts';
import {inDb, number, remark} from '../words.ts';

/** What background and weighting did to the readings of a source. `name` is how sentences call it. */
export function readingRemarks(
	name: string,
	source: string,
	reading: {
		readonly group: {readonly weighting: Weighting; readonly spectrum: TestSpectrum};
		readonly readDb: number;
		readonly background: number | undefined;
		readonly corrected: BackgroundCorrection;
		readonly weightingDb: number;
	},
): Remark[] {
	const {corrected, background, readDb, weightingDb} = reading;
	const {weighting, spectrum} = reading.group;
	const remarks: Remark[] = [];
	const above = background === undefined ? '' : inDb(readDb - background);
	if (corrected.verdict === 'refused') {
		const text = `${name}: ${inDb(readDb)} is only ${above} above the background of ${inDb(background!)}. Nothing can be told from it. Play the signal louder or make the room quieter, then read again.`;
		remarks.push(remark('problem', 'background-too-high', text, source));
	} else if (corrected.verdict === 'unreliable') {
		const text = `${name}: ${above} above the background; ${inDb(-corrected.correctionDb)} taken off, but less than 6 dB apart that is unreliable. Play the signal louder and read again.`;
		remarks.push(remark('doubt', 'background-near', text, source));
	} else if (corrected.verdict === 'corrected') {
		const text = `${name}: ${above} above the background; ${inDb(-corrected.correctionDb, 2)} taken off.`;
		remarks.push(remark('note', 'background-corrected', text, source));
	}

	if (Math.abs(weightingDb) >= largeWeightingDb) {
		const side = weightingDb < 0 ? 'low' : 'high';
		const text = `${name}: with ${weighting} weighting the meter reads ${inDb(Math.abs(weightingDb))} ${side} on ${spectrumName(spectrum)}. Switch the meter to C and read again.`;
		remarks.push(remark('doubt', 'weighting-far-off', text, source));
	} else if (Math.abs(weightingDb) >= 0.05) {
		const text = `${name}: ${weighting} weighting reads ${inDb(Math.abs(weightingDb), 2)} ${weightingDb < 0 ? 'low' : 'high'} on ${spectrumName(spectrum)}; corrected.`;
		remarks.push(remark('note', 'weighting-corrected', text, source));
	}

	return remarks;
}

/**
The odd one out among repeats.

@param alike - Repeats brought to the same conditions, dB.
@param shiftDb - From what the meter showed to these, dB, so that the sentence shows the meter's own number.
@param sigmaDb - Standard deviation of one reading.
*/
export function levelSpreadRemarks(
	name: string,
	source: string,
	alike: readonly number[],
	shiftDb: number,
	sigmaDb: number,
): Remark[] {
	if (alike.length < 2) return [];
	const odd = farthestFromRest(alike);
	const limitDb =
		alike.length === 2 ? 2 * Math.SQRT2 * sigmaDb : 3 * sigmaDb * Math.sqrt(1 + 1 / (alike.length - 1));
	if (Math.abs(odd.difference) <= limitDb) return [];
	const repeats = alike.length === 2 ? 'its repeat' : `the middle of its ${alike.length - 1} repeats`;
	const text = `${name}: ${inDb(odd.value - shiftDb)}, ${inDb(Math.abs(odd.difference))} ${odd.difference > 0 ? 'above' : 'below'} ${repeats}. Take it once more with the meter on a stand.`;
	return [remark('doubt', 'level-spread', text, source)];
}

function spectrumName(spectrum: TestSpectrum): string {
	return spectrum.kind === 'tone'
		? `a ${number(spectrum.hertz, 0)} Hz tone`
		: `pink noise ${number(spectrum.fromHertz, 0)}–${number(spectrum.toHertz, 0)} Hz`;
}
