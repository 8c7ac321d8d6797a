import type {Control} from '../../../profile/ask/boxes.ts';
import {finding} from '../../../profile/finding.ts';
import {leastMasterChangeDb} from '../../../profile/practice.ts';
import {median} from '../../../science/numeric/statistics.ts';
import type {Shared} from '../steps.ts';
import type {LevelFinding} from './facts.ts';

/** A change below this would read as nothing, dB. */
const leastToldChangeDb = 0.05;

/** What is left to the master volume, and what the range of the trims costs. */
export function trimRemarks({rounding, errors}: Shared, own: Control, changeDb: number): LevelFinding[] {
	const remarks: LevelFinding[] = [];
	if (Math.abs(changeDb) >= leastToldChangeDb) {
		const kind = Math.abs(changeDb) >= Math.max(leastMasterChangeDb, own.step) ? 'advice' : 'note';
		const facts = {changeDb, isHeard: kind === 'advice'};
		remarks.push(finding(kind, 'master-volume', [], facts));
	}

	if (rounding.fits) return remarks;
	const middle = median([...errors.values()]);
	const off = [...errors].filter(([, error]) => Math.abs(error - middle) > own.step);
	const outliers = (off.length > 0 ? off : [...errors])
		.map(([id, error]) => ({id, loudDb: error - middle}))
		.sort((a, b) => Math.abs(b.loudDb) - Math.abs(a.loudDb))
		.slice(0, 4);
	const loudest = outliers.find(({loudDb}) => loudDb > 0);
	const facts = {
		rangeDb: own.maximum - own.minimum,
		lostDb: rounding.worstPairwiseError,
		outliers,
		turn: loudest ? ({id: loudest.id, way: 'down'} as const) : ({id: outliers[0]!.id, way: 'up'} as const),
	};
	const about = outliers.length === 1 ? [outliers[0]!.id] : [];
	return [...remarks, finding('problem', 'level-spread-does-not-fit', about, facts)];
}
