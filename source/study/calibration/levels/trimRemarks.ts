import type {Control} from '../../../profile/ask/boxes.ts';
import {listed, nameOf} from '../../../profile/names.ts';
import {leastMasterChangeDb} from '../../../profile/practice.ts';
import type {Profile} from '../../../profile/types.ts';
import {median} from '../../../science/numeric/statistics.ts';
import type {Remark} from '../result.ts';
import type {Shared} from '../steps.ts';
import {inDb, remark} from '../words.ts';

/** What is left to the master volume, and what the range of the trims costs. */
export function trimRemarks(
	profile: Profile,
	{rounding, errors}: Shared,
	own: Control,
	masterChangeDb: number,
): Remark[] {
	const remarks: Remark[] = [];
	if (Math.abs(masterChangeDb) >= leastMasterChangeDb) {
		const text = `Turn the master volume ${masterChangeDb > 0 ? 'up' : 'down'} by ${inDb(Math.abs(masterChangeDb))} to meet the target. The trims match the channels to each other; the rest is common to all.`;
		remarks.push(remark('advice', 'master-volume', text));
	} else if (Math.abs(masterChangeDb) >= 0.05) {
		const text = `All channels end ${inDb(Math.abs(masterChangeDb))} ${masterChangeDb > 0 ? 'below' : 'above'} the target, the same for all: a matter of the master volume, too little to hear.`;
		remarks.push(remark('note', 'master-volume', text));
	}

	if (rounding.fits) return remarks;
	const middle = median([...errors.values()]);
	const off = [...errors].filter(([, error]) => Math.abs(error - middle) > own.step);
	const outliers = (off.length > 0 ? off : [...errors])
		.toSorted(([, a], [, b]) => Math.abs(b - middle) - Math.abs(a - middle))
		.slice(0, 4);
	const parts = outliers.map(
		([id, error]) =>
			`${nameOf(profile, id)} ${inDb(Math.abs(error - middle))} too ${error > middle ? 'loud' : 'soft'}`,
	);
	const [loudest] = outliers.filter(([, error]) => error > middle);
	const fix = loudest
		? `turn ${nameOf(profile, loudest[0])} down at its own amplifier or input, or bring the softer ones nearer`
		: `turn ${nameOf(profile, outliers[0]![0])} up at its own amplifier or input, or bring it nearer`;
	const text = `The levels differ by more than the trims' ${inDb(own.maximum - own.minimum)} of range. Lost: ${inDb(rounding.worstPairwiseError)}. With these settings ${listed(parts)} against most others. To fix it: ${fix}.`;
	remarks.push(
		remark('problem', 'level-spread-does-not-fit', text, outliers.length === 1 ? outliers[0]![0] : undefined),
	);
	return remarks;
}
