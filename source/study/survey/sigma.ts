import type {TapeReading} from '../../profile/types.ts';
import {type Holding, heldMetresAt, tapeSigmaAt} from './holding.ts';

/**
Standard uncertainty of one tape reading, metres: its own where stated, else √((2 mm)² + (1 mm/m · d)² + step²/12) and,
in square, how well each of its two ends can be held.

@see JCGM 100:2008 (GUM), 4.3.7, for step/√12; 2 mm and 1 mm/m are common practice, no source: a tape of accuracy
class II or III (Directive 2014/32/EU, Annex X) is better, the points it is held to are worse.
*/
export function tapeSigmaMetres({from, to, metres, sigmaMetres}: TapeReading, holding: Holding): number {
	if (sigmaMetres !== undefined) return sigmaMetres;
	return Math.hypot(
		tapeSigmaAt(metres, holding.stepMetres),
		heldMetresAt(from, holding),
		heldMetresAt(to, holding),
	);
}
