import type {LengthUnit} from '../../profile/types.ts';
import {decimalsOf, formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import {formatLength, shownStepMetres} from '../../profile/units/length.ts';
import type {Part, SettingChange} from '../../study/comparison/diff/profileDiff.ts';
import {type DistanceEntry, formatEntry} from '../entryText.ts';
import {addingUp} from './addingUp.ts';

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

/** Changes of an entry are told in the unit in which the receiver shows it, so that they can be held against it. */
function changeUnit({entry, lengthUnit}: SettingTextOptions): LengthUnit {
	if (!entry) return lengthUnit;
	return entry.shownIn === 'in' ? 'ft-in' : entry.shownIn;
}

/** A difference with its sign and unit. */
export function signedAmount(
	amount: number,
	{unit}: SettingChange,
	options: SettingTextOptions,
	isFine = false,
): string {
	const lengthUnit = changeUnit(options);
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

/** Smallest difference that an amount is shown with, in the unit of the change. */
function shownStep({unit}: SettingChange, options: SettingTextOptions, isFine: boolean): number {
	if (unit === 'm') return isFine ? 0.001 : shownStepMetres(changeUnit(options));
	return unit === 'Hz' ? 1 : isFine || unit === 'ms' ? 0.01 : 0.1;
}

/** The two or three causes that matter, largest first, and what the others make together: as printed they add up. */
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
	if (shown.length === 1 && sorted.length === 1) return shown[0]![0];
	const step = shownStep(change, options, false);
	const total = change.change ?? shown.reduce((sum, [, amount]) => sum + amount, 0);
	const others = total - shown.reduce((sum, [, amount]) => sum + Math.round(amount / step) * step, 0);
	const parts: ReadonlyArray<readonly [string, number]> =
		shown.length < sorted.length && Math.abs(others) > step / 2 ? [...shown, ['other', others]] : shown;
	const amounts = addingUp(
		parts.map(([, amount]) => amount),
		total,
		step,
	);
	return parts.map(([name], index) => `${name} ${signedAmount(amounts[index]!, change, options)}`).join(', ');
}

/** Every part with its amount; they add up to the change. */
export function fullReasons(change: SettingChange, options: SettingTextOptions): string {
	const amounts = addingUp(
		change.parts.map(({amount}) => amount),
		change.change ?? change.parts.reduce((sum, {amount}) => sum + amount, 0),
		shownStep(change, options, true),
	);
	const parts = change.parts
		.map(({cause}, index) => `${cause} ${signedAmount(amounts[index]!, change, options, true)}`)
		.join(', ');
	return [parts, change.notSplit].filter(Boolean).join('; ');
}
