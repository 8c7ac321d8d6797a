import type {LengthUnit} from '../../profile/types.ts';
import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import {formatLength} from '../../profile/units/length.ts';
import type {ChannelHistory, HistoryPoint, RoomHistory} from '../../study/comparison/history/historyEntry.ts';
import {extremeText} from '../diff/responseText.ts';
import {formatTrim} from '../settingText.ts';
import {sparkline} from '../sparkline.ts';
import {tableLines} from '../table.ts';
import {wrap} from '../wrap.ts';

/** More profiles than this are told by number only. */
const listedProfiles = 12;
const sparkCells = 16;

function firstAndLast<Value>(
	points: readonly HistoryPoint[],
	value: (point: HistoryPoint) => Value | undefined,
	text: (value: Value) => string,
): string {
	const known = points.map(value).filter(one => one !== undefined);
	if (known.length === 0) return '';
	const [first, last] = [text(known[0]!), text(known.at(-1)!)];
	return first === last ? last : `${first} → ${last}`;
}

function yearsText(span: number): string {
	if (span < 0.9) {
		const months = Math.max(1, Math.round(span * 12));
		return months === 1 ? 'one month' : `${months} months`;
	}

	return span < 1.25
		? 'one year'
		: `${formatNumber(span, span < 10 && Math.abs(span - Math.round(span)) > 0.15 ? 1 : 0)} years`;
}

/** A drift that is more than chance, as a sentence with what may lie behind it. */
export function driftText({name, drift}: ChannelHistory): string | undefined {
	if (!drift?.isReal) return undefined;
	const {value, sigma} = drift;
	const cause =
		value < 0
			? 'a failing driver, a turned knob, or a sofa moved'
			: 'a turned knob, a new part, or a sofa moved';
	return `${name}: a drift of ${formatSigned(value, 1)} dB (± ${formatNumber(Math.max(0.1, sigma), 1)} dB) over ${yearsText(drift.years)} against the other channels, distances taken into account: ${cause}. Read it once more, then from close by.`;
}

/** Each channel's figures from first to last: name, distance, level, trim, trend and drift; of recordings deepest dip and decay. */
export function historyRows({channels}: Pick<RoomHistory, 'channels'>, lengthUnit: LengthUnit): string[][] {
	return channels.map(({name, points, drift}) => [
		name,
		firstAndLast(
			points,
			({distanceMetres}) => distanceMetres,
			metres => formatLength(metres, lengthUnit),
		),
		firstAndLast(
			points,
			({levelDb}) => levelDb,
			level => formatNumber(level, 1),
		),
		firstAndLast(points, ({trimDb}) => trimDb, formatTrim),
		points.length > 1
			? sparkline(
					points.map(({driftDb}) => driftDb),
					sparkCells,
					0.5,
				)
			: '',
		drift ? `${formatSigned(drift.value, 1)} ± ${formatNumber(Math.max(0.1, drift.sigma), 1)}` : '',
		firstAndLast(points, ({dip}) => dip, extremeText),
		firstAndLast(
			points,
			({decaySeconds}) => decaySeconds,
			seconds => formatNumber(seconds, 2),
		),
	]);
}

/** The history of one room as text: its profiles, each channel's figures from first to last, and drifts worth a word. */
export function historyText(
	{room, profiles, channels}: RoomHistory,
	options: {readonly lengthUnit: LengthUnit; readonly width: number},
): string {
	const {lengthUnit, width} = options;
	const first = profiles[0];
	const last = profiles.at(-1);
	const count = profiles.length === 1 ? 'one profile' : `${profiles.length} profiles`;
	const span =
		first && last && first.date !== last.date
			? `, ${first.date} to ${last.date}`
			: first
				? `, ${first.date}`
				: '';
	const list =
		profiles.length <= listedProfiles
			? tableLines(
					[
						{title: 'date', importance: 9},
						{title: 'name', importance: 8, leastCells: 12},
						{title: 'profile', importance: 7, leastCells: 8},
					],
					profiles.map(({date, name, id}) => [date, name, id]),
					width,
				)
			: [];
	const rows = historyRows({channels}, lengthUnit);
	const columns = [
		{title: 'channel', importance: 10, leastCells: 10},
		{title: 'distance', importance: 6},
		{title: 'level dB', importance: 4},
		{title: 'trim dB', importance: 7},
		{title: 'trend', importance: 5},
		{title: 'drift dB', align: 'right', importance: 8},
		{title: 'deepest dip', importance: 3},
		{title: 'decay s', importance: 2},
	] as const;
	const remarks = channels.map(driftText).filter(text => text !== undefined);
	return [
		...wrap(`${room}: ${count}${span}`, width),
		...(list.length > 0 ? ['', ...list] : []),
		'',
		...tableLines(columns, rows, width),
		...(remarks.length > 0 ? ['', ...remarks.flatMap(text => wrap(text, width, '  - '))] : []),
	].join('\n');
}
