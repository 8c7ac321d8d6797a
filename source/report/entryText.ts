import type {Receiver} from '../profile/types.ts';
import {decimalsOf, formatNumber} from '../profile/units/decimalText.ts';
import {metresPerFoot, metresPerInch} from '../profile/units/lengthFormat.ts';

/** A receiver's timing control into which a distance is typed. */
export type DistanceEntry = Extract<Receiver['timing'], {kind: 'distance'}>;

const metresPerUnit: Readonly<Record<DistanceEntry['shownIn'], number>> = {
	m: 1,
	cm: 0.01,
	ft: metresPerFoot,
	in: metresPerInch,
};

/**
A distance as it is typed into the receiver: in the receiver's own unit, with the decimals of its own step.

@param metres - The stepped distance.
@param entry - How the receiver takes distances.
*/
export function formatEntry(metres: number, entry: DistanceEntry): string {
	const unit = metresPerUnit[entry.shownIn];
	const decimals = decimalsOf(entry.stepMetres / unit, 0);
	return `${formatNumber(metres / unit, decimals)} ${entry.shownIn}`;
}
