import {nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import type {HeadroomResult} from '../../study/calibration/headroom/result.ts';
import {remarkLines} from '../remarks.ts';
import {sayIn} from '../said/say.ts';
import {tableLines} from '../table.ts';
import {wrap} from '../wrap.ts';

/** Levels that can be reached at each seat against reference gain, as text. */
export function headroomText(profile: Profile, result: HeadroomResult, width: number): string {
	const rows = result.sources.flatMap(({source, neededDb, seats, missing}) =>
		seats.map(({seat, reachDb, marginDb}) => [
			nameOf(profile, source),
			nameOf(profile, seat),
			`${formatNumber(neededDb, 0)} dB`,
			reachDb === undefined ? '' : `${formatNumber(reachDb, 0)} dB`,
			marginDb === undefined ? '' : `${formatSigned(marginDb, 0)} dB`,
			reachDb === undefined ? `missing: ${missing.join(', ')}` : '',
		]),
	);
	return [
		...wrap(`${profile.name}, ${profile.date}: headroom at reference gain`, width),
		'',
		...tableLines(
			[
				{title: 'channel', importance: 9, leastCells: 10},
				{title: 'seat', importance: 7, leastCells: 6},
				{title: 'asked for', importance: 6, align: 'right'},
				{title: 'reached', importance: 8, align: 'right'},
				{title: 'margin', importance: 8, align: 'right'},
				{title: 'remark', importance: 2, leastCells: 12},
			],
			rows,
			width,
		),
		...(result.roomGainDb === 0
			? []
			: ['', `Room gain for the subs: ${formatSigned(result.roomGainDb, 1)} dB.`]),
		...remarkLines(result.remarks, width, sayIn(profile, profile.lengthUnit)),
	].join('\n');
}
