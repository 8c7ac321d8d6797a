import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import type {BeforeAfter, Extreme, ResponseChange} from '../../study/comparison/diff/profileDiff.ts';

/** `−12 dB at 63 Hz`. */
export const extremeText = ({hertz, aboveDb}: Extreme): string =>
	`${formatSigned(aboveDb, 0)} dB at ${formatNumber(hertz, 0)} Hz`;

function pairText(name: string, {before, after}: BeforeAfter<Extreme | null>): string {
	const [then, now] = [before ? extremeText(before) : 'none', after ? extremeText(after) : 'none'];
	return `${name} below 300 Hz ${then} → ${now}`;
}

const apart = (db: number) =>
	Math.abs(db) < 0.05 ? 'as loud' : `${formatNumber(Math.abs(db), 1)} dB ${db < 0 ? 'softer' : 'louder'}`;

/** What changed in one line's response at one seat, as a sentence. */
export function responseText(change: ResponseChange): string {
	const {levelDb, bassLevelDb, dip, peak, mostChanged, decaySeconds, isScatter} = change;
	const parts = [
		...(levelDb === undefined ? [] : [`${apart(levelDb)} against the other lines`]),
		...(bassLevelDb === undefined ? [] : [`its bass ${apart(bassLevelDb)} against them`]),
		...(dip ? [pairText('deepest dip', dip)] : []),
		...(peak ? [pairText('highest peak', peak)] : []),
		...(mostChanged
			? [
					`most changed at ${formatNumber(mostChanged.hertz, 0)} Hz, ${formatSigned(mostChanged.changeDb, 0)} dB`,
				]
			: []),
		...(decaySeconds
			? [
					`dies away in ${formatNumber(decaySeconds.before, 2)} s → ${formatNumber(decaySeconds.after, 2)} s at 500 Hz`,
				]
			: []),
	];
	const told = parts.length > 0 ? parts.join('; ') : 'recorded again, with nothing that can be compared';
	return `${change.name} at ${change.seatName}: ${told}${isScatter ? '; within the scatter of two recordings' : ''}.`;
}
