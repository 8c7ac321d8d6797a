/** Level per factor of energy: dB = ln(energy)/k. */
const k = Math.LN10 / 10;

/** Beyond this, one of two sounds no longer changes the level of both enough to tell their phase, dB. */
export const largestLevelDifferenceDb = 15;

/**
Cosine of the phase between two sounds of one frequency from three levels.

cos φ = (10^(B/10) − 10^(M/10) − 10^(S/10)) / (2·10^((M+S)/20))

@param bothDb - Both together, dB.
@param stillDb - One alone, dB.
@param movedDb - The other alone, dB.
@returns The cosine; outside −1…1 the three cannot belong together.
@see Law of cosines for phasors; with voltages it is the three-voltmeter method of measuring a power factor.
*/
export function cosineFromLevels(bothDb: number, stillDb: number, movedDb: number): number {
	return (
		(10 ** (bothDb / 10) - 10 ** (stillDb / 10) - 10 ** (movedDb / 10)) /
		(2 * 10 ** ((stillDb + movedDb) / 20))
	);
}

/**
Standard uncertainty of that cosine to first order.

@param sigmasDb - Standard uncertainties of both, one and the other, dB.
@see JCGM 100:2008 (GUM), eq. 10.
*/
export function cosineSigma(
	bothDb: number,
	stillDb: number,
	movedDb: number,
	sigmasDb: readonly [both: number, still: number, moved: number],
): number {
	const cosine = cosineFromLevels(bothDb, stillDb, movedDb);
	const root = 2 * 10 ** ((stillDb + movedDb) / 20);
	const byBoth = (k * 10 ** (bothDb / 10)) / root;
	const byStill = -k * (10 ** (stillDb / 10) / root + cosine / 2);
	const byMoved = -k * (10 ** (movedDb / 10) / root + cosine / 2);
	return Math.hypot(byBoth * sigmasDb[0], byStill * sigmasDb[1], byMoved * sigmasDb[2]);
}

/**
Level of two sounds of one frequency together.

@param cosine - Of the phase between them.
@returns dB; a full cancellation is held at 100 dB below the louder.
*/
export function bothLevelDb(stillDb: number, movedDb: number, cosine: number): number {
	const still = 10 ** (stillDb / 10);
	const moved = 10 ** (movedDb / 10);
	const both = still + moved + 2 * Math.sqrt(still * moved) * cosine;
	return 10 * Math.log10(Math.max(both, 1e-10 * Math.max(still, moved)));
}
