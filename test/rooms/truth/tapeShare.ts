import type {NetRun, Noticed} from '../surveying.ts';
import {type Bar, percentText, shareOf, table} from './share.ts';

const kinds = [
	['foot', 'finished round'],
	['ten', 'finished round'],
	['footAtAnyTime', 'checked points, at any time'],
] as const;

const noticed = (runs: readonly NetRun[], kind: (typeof kinds)[number][0]): Noticed[] =>
	runs.flatMap(run => run[kind] ?? []);

export function tapeLines(runs: readonly NetRun[]): string[] {
	const mean = runs.reduce((sum, {readings}) => sum + readings, 0) / runs.length;
	const rows = kinds.map(([kind, when]) => {
		const all = noticed(runs, kind);
		return [
			`${kind === 'ten' ? '10 cm' : 'a foot'}, ${when}`,
			`${all.length}`,
			percentText(shareOf(all, ({isNoticed}) => isNoticed)),
			percentText(shareOf(all, ({isNamed}) => isNamed)),
			percentText(shareOf(all, ({isInnocentNamed}) => isInnocentNamed)),
		];
	});
	return [
		`Tape nets of 5.1 with points held to 12, 7 and 7 mm: ${mean.toFixed(0)} readings a round`,
		`clean rounds with a reading accused: ${percentText(shareOf(runs, ({isAccused}) => isAccused))} of ${runs.length}`,
		...table([['planted', 'nets', 'noticed', 'named', 'innocent named'], ...rows]),
	];
}

export function tapeBars(runs: readonly NetRun[]): Bar[] {
	const found = ({isNoticed}: Noticed) => isNoticed;
	return [
		{
			what: 'tape: clean nets with a reading accused',
			share: shareOf(runs, ({isAccused}) => isAccused),
			atMost: 5,
		},
		{
			what: 'tape: a foot noticed in a finished round',
			share: shareOf(noticed(runs, 'foot'), found),
			atLeast: 90,
		},
		{
			what: 'tape: 10 cm noticed in a finished round',
			share: shareOf(noticed(runs, 'ten'), found),
			atLeast: 70,
		},
		{
			what: 'tape: a foot noticed among checked points at any time',
			share: shareOf(noticed(runs, 'footAtAnyTime'), found),
			atLeast: 80,
		},
	];
}
