import type {LengthUnit} from '../../../profile/types.ts';
import {type LengthChoice, readLength} from '../../../profile/units/length.ts';
import type {Reading} from '../prompt/taken.ts';

/**
A length as a tape reads it: more than nothing; in feet and inches 5.11 may be meant as inches, and is asked about.

@param mayBeNothing - Of a box that may touch the wall.
*/
export function readTaped(text: string, unit: LengthUnit, mayBeNothing = false): Reading<LengthChoice> {
	const reading = readLength(text, unit);
	if (reading.kind !== 'ok') return reading;
	if (reading.metres < 0 || (reading.metres === 0 && !mayBeNothing))
		return {kind: 'no', why: 'A length is more than nothing. Type what the tape shows.'};
	const [, feet, inches] = (unit === 'ft-in' && /^\s*(\d+)[.,](1[01])\s*$/.exec(text)) || [];
	if (feet === undefined) return reading;
	const meant = readLength(`${feet}-${inches}`, unit);
	if (meant.kind !== 'ok') return reading;
	return {
		kind: 'ask',
		question: `${text.trim()}: inches after the point, or parts of a foot?`,
		choices: [meant, reading],
	};
}
