import {blendMinutes} from '../ways.ts';
import {pairToneHertz} from './pairTones.ts';
import {pairNoises} from './pairTrial.ts';

/** What a change between subs takes: tones at three delays, noise before and after. */
export type PairCost = {readonly readings: number; readonly changes: number; readonly minutes: number};

/** Two delays, back, and the change itself. */
const changes = 4;

export function pairCost(fronts: number): PairCost {
	const readings = 3 * pairToneHertz.length + 4 * pairNoises(fronts).length;
	return {readings, changes, minutes: blendMinutes(readings, changes)};
}
