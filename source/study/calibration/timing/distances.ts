import {type Observations, tapeKey} from '../../../profile/ask/readings.ts';
import {finding} from '../../../profile/finding.ts';
import {leastSpreadMetres, surerShare} from '../../../profile/practice.ts';
import type {TapeReading} from '../../../profile/types.ts';
import {combinedSigma, median, sampleDeviation} from '../../../science/numeric/statistics.ts';
import {type Holding, heldMetresAt} from '../../survey/holding.ts';
import {tapeSigmaMetres} from '../../survey/sigma.ts';
import type {DistanceResult} from '../result.ts';
import type {TimingFinding} from './facts.ts';

/** Distances that a net of tape readings gives, by `tapeKey(seat, end)`. */
export type AdjustedDistances = ReadonlyMap<
	string,
	{readonly metres: number; readonly sigmaMetres: number; readonly isSuspected?: boolean}
>;

/** Tape readings sorted by their ends, and how well the tape was held. */
export type TapeRead = {readonly observations: Pick<Observations, 'tape'>; readonly holding: Holding};

export type MeasuredDistance = {
	readonly distance: DistanceResult;
	readonly remarks: readonly TimingFinding[];
};

/** Of each reading's uncertainty the part that repeats average out, besides how its ends are held, metres. */
const readingSigma = 0.002;

/**
Distance from a speaker or sub to a seat: the mean of the repeats, or the adjusted net where that is surer.

@returns `undefined` where there is neither a reading nor an adjusted distance.
*/
export function measuredDistance(
	{observations, holding}: TapeRead,
	seat: string,
	end: string,
	adjusted?: AdjustedDistances,
): MeasuredDistance | undefined {
	const key = tapeKey(seat, end);
	const readings = observations.tape.get(key);
	const net = adjusted?.get(key);
	const direct = readings && meanOfReadings(readings, holding);
	if (net && !net.isSuspected && (!direct || net.sigmaMetres < direct.sigmaMetres * surerShare)) {
		const distance: DistanceResult = {
			metres: net.metres,
			sigmaMetres: net.sigmaMetres,
			from: 'network',
			readings: readings?.length ?? 0,
		};
		const facts = {metres: net.metres, ...(direct && {directMetres: direct.metres})};
		return {distance, remarks: [finding('note', 'distance-from-network', [end], facts)]};
	}

	if (!direct) return undefined;
	const remarks = spreadRemarks(holding, end, readings!, direct);
	if (net?.isSuspected) {
		const facts = {readMetres: direct.metres, networkMetres: net.metres};
		remarks.unshift(finding('doubt', 'distance-suspected', [end], facts));
	}

	return {distance: direct, remarks};
}

/** Repeats average out the holding of the tape; its scale and its divisions stay. */
function meanOfReadings(readings: readonly TapeReading[], holding: Holding): DistanceResult {
	const count = readings.length;
	const lengths = readings.map(({metres}) => metres);
	const metres = lengths.reduce((sum, length) => sum + length, 0) / count;
	const typical: TapeReading = {from: readings[0]!.from, to: readings[0]!.to, metres};
	const held = combinedSigma(
		readingSigma,
		heldMetresAt(typical.from, holding),
		heldMetresAt(typical.to, holding),
	);
	const stated = readings.filter(({sigmaMetres}) => sigmaMetres !== undefined);
	const random =
		stated.length === count
			? Math.sqrt(stated.reduce((sum, {sigmaMetres}) => sum + sigmaMetres! ** 2, 0)) / count
			: Math.max(held, count >= 3 ? sampleDeviation(lengths) : 0) / Math.sqrt(count);
	const lasting =
		stated.length === count ? 0 : Math.sqrt(Math.max(0, tapeSigmaMetres(typical, holding) ** 2 - held ** 2));
	return {
		metres,
		sigmaMetres: combinedSigma(random, lasting),
		from: count > 1 ? 'repeats' : 'reading',
		readings: count,
	};
}

function spreadRemarks(
	holding: Holding,
	end: string,
	readings: readonly TapeReading[],
	mean: DistanceResult,
): TimingFinding[] {
	if (readings.length < 2) return [];
	const odd = farthestFromRest(readings.map(({metres}) => metres));
	const {from, to} = readings[0]!;
	const sigma = tapeSigmaMetres({from, to, metres: mean.metres}, holding);
	if (Math.abs(odd.difference) <= Math.max(leastSpreadMetres, 3 * Math.SQRT2 * sigma)) return [];
	const facts = {
		metres: odd.value,
		differenceMetres: odd.difference,
		repeats: readings.length - 1,
	};
	return [finding('doubt', 'tape-spread', [end], facts)];
}

/**
The value farthest from the others, and how far it lies from their middle.

@param values - Shape (n ≥ 2). Of two, the later counts as the odd one.
*/
export function farthestFromRest(values: readonly number[]): {
	readonly index: number;
	readonly value: number;
	readonly difference: number;
} {
	if (values.length === 2) {
		return {index: 1, value: values[1]!, difference: values[1]! - values[0]!};
	}

	const middle = median(values);
	let index = 0;
	for (const [candidate, value] of values.entries()) {
		if (Math.abs(value - middle) > Math.abs(values[index]! - middle)) index = candidate;
	}

	return {index, value: values[index]!, difference: values[index]! - middle};
}
