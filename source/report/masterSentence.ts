import {formatNumber, formatSigned} from '../profile/units/decimalText.ts';
import type {Solution} from '../study/calibration/result.ts';

/**
What to do with the master volume, as a sentence; nothing where it is not known. A change is never told as if it were a
value: taken at its word it could be far too loud.
*/
export function masterSentence({
	masterVolumeTurnDb: change,
	masterVolumeDb: value,
}: Pick<Solution, 'masterVolumeTurnDb' | 'masterVolumeDb'>): string | undefined {
	if (change === undefined) return undefined;
	if (change === 0) return 'Master volume: leave it as it is.';
	const to = value === undefined ? '' : `, to ${formatSigned(value, 1)} dB`;
	return `Master volume: turn it ${change > 0 ? 'up' : 'down'} by ${formatNumber(Math.abs(change), 1)} dB${to}.`;
}
