import type {LengthUnit} from '../../profile/types.ts';
import {decimalsOf, formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import {formatLength} from '../../profile/units/length.ts';
import type {Part, SettingChange} from '../../study/comparison/diff/profileDiff.ts';
import {type DistanceEntry, formatEntry} from '../entryText.ts';

export type SettingTextOptions = {
	readonly lengthUnit: LengthUnit;
	/** How the receiver shows distances that are typed into it; the display unit where not given. */
	readonly entry?: DistanceEntry;
};

/** One value of a setting with its unit, as the box shows it. */
export function settingValue(
	value: number | string | undefined,
	change: SettingChange,
	options: SettingTextOptions,
): string {
	if (value === undefined) return '–';
	if (typeof value === 'string') return value === 'full' ? 'full range' : value;
	if (change.unit === 'm') {
		return options.entry ? formatEntry(value, options.entry) : formatLength(value, options.lengthUnit);
	}

	if (change.unit === 'Hz') return `${formatNumber(value, 0)} Hz`;
	const text = change.unit === 'dB' ? formatSigned : formatNumber;
	return `${text(value, decimalsOf(value))} ${change.unit}`;
}

/** A difference with its sign and unit. */
export function signedAmount(
	amount: number,
	{unit}: SettingChange,
	{lengthUnit}: SettingTextOptions,
	isFine = false,
): string {
	if (unit === 'm') {
		const text = formatLength(Math.abs(amount), lengthUnit, isFine ? {stepMetres: 0.001} : {});
		if (!/[1-9]/.test(text)) return text;
		return amount < 0 ? `−${text}` : `+${text}`;
	}

	const decimals = unit === 'Hz' ? 0 : isFine || unit === 'ms' ? 2 : 1;
	return `${formatSigned(amount, decimals)} ${unit}`.trim();
}

/** A level that is read with other trims in force changes both by as much: for the eye they are one. */
const oneForTheEye: Readonly<Partial<Record<Part['cause'], string>>> = {
	'level at seat': 'level',
	'trim in force': 'level',
	'master volume': 'level',
};

/** Parts that are less than this share of all are left out of the short form. */
const leastShare = 0.15;

/** The two or three causes that matter, largest first. */
export function shortReasons(change: SettingChange, options: SettingTextOptions): string {
	const sums = new Map<string, number>();
	for (const {cause, amount} of change.parts) {
		const name = oneForTheEye[cause] ?? cause;
		sums.set(name, (sums.get(name) ?? 0) + amount);
	}

	const sorted = [...sums].sort(([, a], [, b]) => Math.abs(b) - Math.abs(a));
	const all = sorted.reduce((sum, [, amount]) => sum + Math.abs(amount), 0);
	const shown = sorted.filter(([, amount]) => Math.abs(amount) >= leastShare * all).slice(0, 3);
	if (shown.length === 0) return change.notSplit ?? '';
	const only = shown.length === 1 && sorted.length === 1;
	return only
		? shown[0]![0]
		: shown.map(([name, amount]) => `${name} ${signedAmount(amount, change, options)}`).join(', ');
}

/** Every part with its amount; they add up to the change. */
export function fullReasons(change: SettingChange, options: SettingTextOptions): string {
	const parts = change.parts
		.map(({cause, amount}) => `${cause} ${signedAmount(amount, change, options, true)}`)
		.join(', ');
	return [parts, change.notSplit].filter(Boolean).join('; ');
}
