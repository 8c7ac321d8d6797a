import {isStale} from '../../../profile/ask/digest.ts';
import {standingSettings} from '../../../profile/ask/settings.ts';
import {listed} from '../../../profile/names.ts';
import type {Profile} from '../../../profile/types.ts';
import type {Remark, Uncertain} from '../result.ts';
import {inDb, inSignedDb, remark} from '../words.ts';
import type {Prepared} from './plan.ts';
import type {ProofReading} from './proofResult.ts';

/** What a person should know of a second round besides its figures. */
export function proofRemarks(
	profile: Profile,
	{items}: Prepared,
	readings: readonly ProofReading[],
	shift: Uncertain | undefined,
): Remark[] {
	const remarks: Remark[] = [];
	const decided = standingSettings(profile);
	if (!decided) {
		const text =
			'The profile stores no settings, so there is nothing to prove. Dial in and keep the settings first.';
		remarks.push(remark('problem', 'settings-missing', text));
	} else if (items.length === 0) {
		const text = 'The first round holds no level to forecast from. Read every channel at the seat first.';
		remarks.push(remark('problem', 'first-round-missing', text));
	} else if (readings.length === 0) {
		const text = `No reading of the second round yet. Take ${items.length === 1 ? 'it' : `all ${items.length}`} with the settings “${decided.name ?? decided.id}” in force.`;
		remarks.push(remark('problem', 'second-round-missing', text));
	}

	if (isStale(profile)) {
		const text =
			'Readings or gear changed after these settings were computed. Solve again, or the proof is that of old settings.';
		remarks.push(remark('doubt', 'settings-stale', text));
	}

	if (shift) {
		const way = shift.value > 0 ? 'higher' : 'lower';
		const text = `All readings are ${inDb(Math.abs(shift.value))} ${way} than predicted: the master volume stands elsewhere than in the first round, or than its settings say. This was taken out first.`;
		remarks.push(remark('note', 'master-moved', text));
	}

	const unclear = readings.filter(({verdict}) => verdict === 'unclear');
	for (const {name, seatName, residual, sigma} of unclear) {
		const text = `${name} at ${seatName}: ${inSignedDb(residual)}, beyond the tolerance but not beyond the noise of ${inDb(sigma)}. Read it once or twice more; the repeats decide.`;
		remarks.push(remark('advice', 'repeat-decides', text, name));
	}

	const left = items.filter(({taken}) => taken === 0);
	if (readings.length > 0 && left.length > 0) {
		const names = left.slice(0, 4).map(({name, seatName}) => `${name} at ${seatName}`);
		const more = left.length - names.length;
		const text = `Not read in the second round: ${listed(more > 0 ? [...names, `${more} more`] : names)}.`;
		remarks.push(remark('advice', 'reading-left-out', text));
	}

	const assumed = items.flatMap(({name, assumption}) =>
		assumption === undefined ? [] : [`${name}: ${assumption}`],
	);
	for (const text of new Set(assumed)) remarks.push(remark('note', 'assumption', text));
	return remarks;
}
