import {changedWays, oneWays, type RecordedRun, type RecordedWay} from '../recording.ts';
import {type Bar, percentText, shareOf, table} from './share.ts';

/** A change of this much is won or lost, dB. */
const tellingDb = 0.3;
const fronts = ['FL', 'FR', 'FC'] as const;
const meanOf = ({gains}: RecordedRun) => (gains.FL + gains.FR + gains.FC) / 3;
const isWon = (run: RecordedRun) => meanOf(run) >= tellingDb;
const isLost = (run: RecordedRun) => meanOf(run) <= -tellingDb;

const kits = ['known', 'hidden'] as const;
const ways: readonly RecordedWay[] = [...changedWays, ...oneWays];

export function recordLines(all: readonly RecordedRun[]): string[] {
	const rows = kits.flatMap(kit =>
		ways.flatMap(way => {
			const runs = all.filter(run => run.kit === kit && run.way === way);
			if (runs.length === 0) return [];
			return [
				[
					`${kit}, ${way}`,
					`${runs.length}`,
					percentText(shareOf(runs, isWon)),
					percentText(shareOf(runs, isLost)),
					...fronts.map(id => percentText(shareOf(runs, ({gains}) => gains[id] <= -tellingDb))),
					(runs.reduce((sum, run) => sum + meanOf(run), 0) / runs.length).toFixed(2),
					percentText(shareOf(runs, ({verdict}) => verdict === 'put back')),
					percentText(shareOf(runs, ({verdict}) => verdict === 'lacks')),
				],
			];
		}),
	);
	return [
		'Blend by recording, verified by one more playing, against distances alone (0.3 dB)',
		...table([
			[
				'kit, recorded',
				'rooms',
				'won',
				'lost',
				'FL lost',
				'FR lost',
				'FC lost',
				'mean dB',
				'put back',
				'lacks',
			],
			...rows,
		]),
	];
}

export function recordBars(all: readonly RecordedRun[]): Bar[] {
	const one = all.filter(({way}) => way === 'one playing');
	const ofOne: Bar[] = [
		{
			what: 'recording, one playing: lost on the mean of the fronts',
			share: shareOf(one, isLost),
			atMost: 2,
		},
		{
			what: 'recording, one playing: lost on FC',
			share: shareOf(one, ({gains}) => gains.FC <= -tellingDb),
			atMost: 2,
		},
	];
	const byChanges = kits.flatMap((kit): Bar[] => {
		const runs = all.filter(run => run.kit === kit && run.way === 'three fronts');
		return [
			{
				what: `recording, ${kit}: won on the mean of the fronts`,
				share: shareOf(runs, isWon),
				atLeast: kit === 'known' ? 80 : 90,
			},
			{what: `recording, ${kit}: lost on the mean of the fronts`, share: shareOf(runs, isLost), atMost: 0},
			...fronts.map(
				(id): Bar => ({
					what: `recording, ${kit}: lost on ${id}`,
					share: shareOf(runs, ({gains}) => gains[id] <= -tellingDb),
					atMost: 2,
				}),
			),
		];
	});
	return [...byChanges, ...ofOne];
}
