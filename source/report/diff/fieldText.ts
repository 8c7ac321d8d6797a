import type {LengthUnit} from '../../profile/types.ts';
import {formatLength} from '../../profile/units/length.ts';
import type {FieldChange} from '../../study/comparison/diff/profileDiff.ts';

const units: Readonly<Record<string, string>> = {
	Hertz: 'Hz',
	Db: 'dB',
	Ms: 'ms',
	Ohms: 'Ω',
	Watts: 'W',
	Celsius: '°C',
	Percent: '%',
	Pascals: 'Pa',
	Seconds: 's',
	MetresPerSecond: 'm/s',
};

function fieldValueText(value: unknown, unit: string, lengthUnit: LengthUnit): string {
	if (value === undefined) return 'not stated';
	if (typeof value === 'number') {
		if (unit === 'm') return formatLength(value, lengthUnit);
		return `${String(value).replace('-', '−')}${unit && ` ${unit}`}`;
	}

	if (typeof value === 'boolean') return value ? 'yes' : 'no';
	if (typeof value === 'string') return value;
	if (Array.isArray(value) && value.every(item => typeof item !== 'object'))
		return unit === 'm'
			? value.map(item => fieldValueText(item, unit, lengthUnit)).join(', ')
			: `${value.join(', ')}${unit && ` ${unit}`}`;
	return Array.isArray(value) ? `${value.length} entries` : 'other data';
}

const isObject = (value: unknown) => typeof value === 'object' && value !== null && !Array.isArray(value);

function describedText(before: unknown, after: unknown): string {
	if (before === undefined) return 'described for the first time';
	return after === undefined ? 'no longer described' : 'described anew';
}

/** One field of a box or speaker that reads differently: `low limit 55 Hz → 40 Hz`. The unit comes from the key's name. */
export function fieldText({path, before, after}: FieldChange, lengthUnit: LengthUnit): string {
	const key = path.split('.').at(-1) ?? path;
	const suffix = Object.keys(units)
		.sort((a, b) => b.length - a.length)
		.find(end => key.endsWith(end));
	const isLength = !suffix && /Metres$/.test(key);
	const stem = suffix ? key.slice(0, -suffix.length) : isLength ? key.slice(0, -'Metres'.length) : key;
	const parent = path
		.split('.')
		.slice(0, -1)
		.filter(part => part !== 'speaker');
	const words = [...parent, stem]
		.map(part => part.replace(/[A-Z]/g, letter => ` ${letter.toLowerCase()}`))
		.join(' ');
	const unit = isLength ? 'm' : suffix ? units[suffix]! : '';
	if (isObject(before) || isObject(after)) return `${words.trim()} ${describedText(before, after)}`;
	const [was, is] = [fieldValueText(before, unit, lengthUnit), fieldValueText(after, unit, lengthUnit)];
	return was === is ? `${words.trim()} other than before` : `${words.trim()} ${was} → ${is}`;
}
