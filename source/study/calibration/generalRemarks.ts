import {receiverOf} from '../../profile/ask/boxes.ts';
import type {Observations} from '../../profile/ask/readings.ts';
import {listed} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import {standingKnown} from './levels/levelContext.ts';
import type {Remark} from './result.ts';
import {remark} from './words.ts';

/** What concerns the whole solution: assumptions made, and whether anything was measured at all. */
export function generalRemarks(
	profile: Profile,
	observations: Observations,
	has: {readonly hasArrivals: boolean; readonly hasLevels: boolean},
): Remark[] {
	const remarks: Remark[] = [];
	if (!has.hasArrivals && !has.hasLevels) {
		const text =
			'Nothing is measured yet. Take the distance of each speaker to the reference seat, then the level of each.';
		remarks.push(remark('problem', 'nothing-measured', text));
	}

	if (receiverOf(profile).isAssumed) {
		const text =
			'No receiver is described. Delays in steps of 0.1 ms and trims in steps of 0.5 dB from −12 to +12 dB are assumed. Enter its steps and limits to get what it can take.';
		remarks.push(remark('doubt', 'receiver-assumed', text));
	}

	if (profile.air?.temperatureCelsius === undefined && has.hasArrivals) {
		const text =
			'No air temperature is given; 20 °C is assumed. 3 °C more or less change a delay by half a per cent.';
		remarks.push(remark('note', 'temperature-assumed', text));
	}

	const standing = standingKnown(observations);
	if (has.hasLevels && standing !== 'all') {
		const which = standing === 'none' ? 'The level readings do not' : 'Some level readings do not';
		const text = `${which} say which trims stood; 0 dB is assumed. If trims were set then, enter them with the readings.`;
		remarks.push(remark(standing === 'none' ? 'note' : 'doubt', 'trims-assumed-zero', text));
	}

	const {bassProcessor} = profile;
	const lost = (profile.subs ?? []).filter(
		({processorOutput}) => processorOutput !== undefined && !bassProcessor?.outputs.includes(processorOutput),
	);
	if (lost.length > 0) {
		const text = `${listed(lost.map(({name}) => name))}: the bass processor's output is not described, so the sub counts as connected directly.`;
		remarks.push(remark('doubt', 'output-unknown', text));
	}

	return remarks;
}
