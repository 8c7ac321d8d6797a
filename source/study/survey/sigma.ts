import type {Kit, TapeReading} from '../../profile/types.ts';

/** Metric tapes are marked in millimetres; finer than that is not read where no step is stated. */
const usualStepMetres = 0.001;

/**
Standard uncertainty of one tape reading, metres: its own where stated, else √((2 mm)² + (1 mm/m · d)² + step²/12).

The last term is that of rounding to a step, a rectangular distribution of that width.

@see JCGM 100:2008 (GUM), 4.3.7, for step/√12; the other two are common practice, no source: a tape of accuracy
class II or III (Directive 2014/32/EU, Annex X) is better, the points it is held to are worse.
*/
export function tapeSigmaMetres({metres, sigmaMetres}: TapeReading, kit?: Kit): number {
	if (sigmaMetres !== undefined) return sigmaMetres;
	return Math.hypot(0.002, 0.001 * metres, (kit?.tapeStepMetres ?? usualStepMetres) / Math.sqrt(12));
}
