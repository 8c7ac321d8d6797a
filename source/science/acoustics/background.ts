/** How far the background's noise may be trusted to be taken away. */
export type BackgroundVerdict = 'left out' | 'corrected' | 'unreliable' | 'refused';

export type BackgroundCorrection = {
	readonly verdict: BackgroundVerdict;
	/** Level without the background, dB; the uncorrected level where left out or refused. */
	readonly levelDb: number;
	/** Corrected minus read, dB, ≤ 0. */
	readonly correctionDb: number;
	/** Factor by which the uncertainty of the level grows. */
	readonly sigmaFactor: number;
};

const leftOutAboveDb = 15;
const reliableFromDb = 6;
const refusedUpToDb = 3;

/**
Takes the background noise out of a level that was read over it.

More than 15 dB between the two: left out. From 6 to 15 dB: corrected. Between 3 and 6 dB: corrected and called
unreliable. 3 dB or less: refused.

@param levelDb - Level with source and background, dB.
@param backgroundDb - Background alone with the same weighting at the same place, dB.
@see ISO 3744:2010 for K1 = −10·lg(1 − 10^(−ΔL/10)) from 6 to 15 dB; ISO 3746 for the 3 dB criterion of survey grade.
*/
export function withoutBackground(levelDb: number, backgroundDb: number): BackgroundCorrection {
	const differenceDb = levelDb - backgroundDb;
	if (differenceDb > leftOutAboveDb) return {verdict: 'left out', levelDb, correctionDb: 0, sigmaFactor: 1};
	if (differenceDb <= refusedUpToDb) return {verdict: 'refused', levelDb, correctionDb: 0, sigmaFactor: 1};
	const remaining = 1 - 10 ** (-differenceDb / 10);
	const correctionDb = 10 * Math.log10(remaining);
	return {
		verdict: differenceDb < reliableFromDb ? 'unreliable' : 'corrected',
		levelDb: levelDb + correctionDb,
		correctionDb,
		// The derivative of the corrected level by the level read.
		sigmaFactor: 1 / remaining,
	};
}
