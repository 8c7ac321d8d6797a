import type {RecordedReading} from '../../../profile/ask/recordedReadings.ts';
import {finding} from '../../../profile/finding.ts';
import {largeWeightingDb} from '../../../profile/practice.ts';
import type {Weighting} from '../../../profile/types.ts';
import type {BackgroundCorrection} from '../../../science/acoustics/background.ts';
import type {TestSpectrum} from '../../../science/acoustics/band.ts';
import {farthestFromRest} from '../timing/distances.ts';
import type {LevelFinding} from './facts.ts';

/** A source, and the seat where levels are made for several. */
export type LevelSubject = {readonly about: readonly string[]; readonly seat?: string};

/** Less would read as nothing, dB. */
const leastWeightingDb = 0.1;

/** What background and weighting did to the readings of a source. */
export function correctionFindings(
	{about, ...at}: LevelSubject,
	reading: {
		readonly group: {readonly weighting: Weighting; readonly spectrum: TestSpectrum};
		readonly readDb: number;
		readonly background: number | undefined;
		readonly corrected: BackgroundCorrection;
		readonly weightingDb: number;
	},
): LevelFinding[] {
	const {corrected, background, readDb, weightingDb, group} = reading;
	const found: LevelFinding[] = [];
	if (background !== undefined) {
		const aboveDb = readDb - background;
		const taken = {...at, aboveDb, takenOffDb: -corrected.correctionDb};
		const heard = {...at, levelDb: readDb, aboveDb, backgroundDb: background};
		if (corrected.verdict === 'refused') found.push(finding('problem', 'background-too-high', about, heard));
		else if (corrected.verdict === 'unreliable')
			found.push(finding('doubt', 'background-near', about, taken));
		else if (corrected.verdict === 'corrected')
			found.push(finding('note', 'background-corrected', about, taken));
	}

	const weighted = {...at, weighting: group.weighting, offDb: weightingDb, signal: group.spectrum};
	if (Math.abs(weightingDb) >= largeWeightingDb)
		found.push(finding('doubt', 'weighting-far-off', about, weighted));
	else if (Math.abs(weightingDb) >= leastWeightingDb)
		found.push(finding('note', 'weighting-corrected', about, weighted));
	return found;
}

/**
The odd one out among repeats.

@param alike - Repeats brought to the same conditions, dB.
@param shiftDb - From what the meter showed to these, dB, so that the meter's own number is told.
@param sigmaDb - Standard deviation of one reading.
*/
export function levelSpreadFindings(
	{about, ...at}: LevelSubject,
	alike: readonly number[],
	shiftDb: number,
	sigmaDb: number,
): LevelFinding[] {
	if (alike.length < 2) return [];
	const odd = farthestFromRest(alike);
	const limitDb =
		alike.length === 2 ? 2 * Math.SQRT2 * sigmaDb : 3 * sigmaDb * Math.sqrt(1 + 1 / (alike.length - 1));
	if (Math.abs(odd.difference) <= limitDb) return [];
	const facts = {
		...at,
		levelDb: odd.value - shiftDb,
		differenceDb: odd.difference,
		repeats: alike.length - 1,
	};
	return [finding('doubt', 'level-spread', about, facts)];
}

/** A level that nobody read: by a recording, against lines that were. */
export function recordedFinding(
	{about, ...at}: LevelSubject,
	{against}: RecordedReading,
	sigmaDb: number,
): LevelFinding {
	return finding('note', 'level-by-recording', about, {...at, against, sigmaDb});
}
