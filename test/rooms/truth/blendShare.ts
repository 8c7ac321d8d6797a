import type {KitKind} from '../gear.ts';
import type {Round} from '../round.ts';
import {type Bar, percentText, quantileOf, shareOf, table} from './share.ts';

/** What the blend won, promised and asked for in one room. */
export type BlendRun = {
	readonly room: string;
	readonly kit: KitKind;
	readonly reverberationSeconds: number;
	/** Loss before minus after, dB: positive is better. */
	readonly gains: {readonly FC: number; readonly fronts: number};
	readonly together: Round['together'];
	readonly readings: number;
	readonly spot: Round['promisedAtSpot'];
	readonly beside: Round['promisedBeside'];
};

export function blendRun({
	session,
	losses,
	together,
	blendReadings,
	promisedAtSpot,
	promisedBeside,
}: Round): BlendRun {
	const {seed, kit, reverberationSeconds} = session.world;
	return {
		room: seed,
		kit,
		reverberationSeconds,
		gains: {
			FC: losses.distances.FC - losses.blended.FC,
			fronts: losses.distances.fronts - losses.blended.fronts,
		},
		together,
		readings: blendReadings,
		spot: promisedAtSpot,
		beside: promisedBeside,
	};
}

/** A change of this much is won or lost, dB. */
const tellingDb = 0.3;
const won = (what: 'FC' | 'fronts') => (run: BlendRun) => run.gains[what] >= tellingDb;
const lost = (what: 'FC' | 'fronts') => (run: BlendRun) => run.gains[what] <= -tellingDb;
const isWithin = ({errorDb, sigmaDb}: BlendRun['spot'][number]) => Math.abs(errorDb) <= 1.96 * sigmaDb;

function threeWay(runs: readonly BlendRun[], what: 'FC' | 'fronts'): string {
	const [wins, losses] = [shareOf(runs, won(what)), shareOf(runs, lost(what))];
	const tied = {held: runs.length - wins.held - losses.held, of: runs.length};
	return [wins, tied, losses].map(share => percentText(share).replace(' %', '')).join('/');
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

export function blendLines(title: string, all: readonly BlendRun[]): string[] {
	const kits = (['known', 'hidden', 'anechoic'] as const).filter(kit => all.some(run => run.kit === kit));
	const rows = kits.map(kit => {
		const runs = all.filter(run => run.kit === kit);
		const [spot, beside] = [runs.flatMap(run => run.spot), runs.flatMap(run => run.beside)];
		return [
			kit,
			`${runs.length}`,
			threeWay(runs, 'FC'),
			threeWay(runs, 'fronts'),
			mean(runs.map(({gains}) => gains.FC)).toFixed(2),
			mean(runs.map(({gains}) => gains.fronts)).toFixed(2),
			mean(runs.map(({readings}) => readings)).toFixed(0),
			percentText(shareOf(spot, isWithin)),
			percentText(shareOf(beside, isWithin)),
			spot.length === 0
				? '-'
				: quantileOf(
						spot.map(({sigmaDb}) => sigmaDb),
						0.5,
					).toFixed(2),
			`${spot.length}`,
		];
	});
	return [
		title,
		...table([
			[
				'kit',
				'rooms',
				'FC w/t/l %',
				'fronts w/t/l %',
				'FC dB',
				'fronts dB',
				'readings',
				'spot',
				'12 cm',
				'sigma',
				'tones',
			],
			...rows,
		]),
	];
}

export function blendBars(all: readonly BlendRun[]): Bar[] {
	const open = all.filter(run => run.kit === 'anechoic');
	const inOpenSpace: Bar[] = [
		{what: 'blend, open space: lost on the centre', share: shareOf(open, lost('FC')), atMost: 5},
		{what: 'blend, open space: won on the centre', share: shareOf(open, won('FC')), atLeast: 80},
	];
	const inRooms = (['known', 'hidden'] as const).flatMap((kit): Bar[] => {
		const runs = all.filter(run => run.kit === kit);
		const spot = runs.flatMap(run => run.spot);
		return [
			{what: `blend, ${kit}: lost on the centre`, share: shareOf(runs, lost('FC')), atMost: 5},
			{
				what: `blend, ${kit}: lost on the mean of the fronts`,
				share: shareOf(runs, lost('fronts')),
				atMost: 5,
			},
			{
				what: `blend, ${kit}: won on the mean of the fronts`,
				share: shareOf(runs, won('fronts')),
				atLeast: kit === 'known' ? 10 : 25,
			},
			{
				what: `blend, ${kit}: confirming tones within 1.96 sigma`,
				share: shareOf(spot, isWithin),
				atLeast: 90,
				atMost: 99,
			},
			{
				what: `blend, ${kit}: sigma of a confirming tone ≤ 0.8 dB`,
				share: shareOf(spot, ({sigmaDb}) => sigmaDb <= 0.8),
				atLeast: 50,
			},
		];
	});
	return [...inRooms, ...inOpenSpace];
}

export function togetherLines(all: readonly BlendRun[]): string[] {
	const rows = (['known', 'hidden', 'anechoic'] as const).flatMap(kit => {
		const runs = all.filter(run => run.kit === kit);
		if (runs.length === 0) return [];
		const cells = (['beforeDb', 'afterDb'] as const).flatMap(when => {
			const errors = runs.map(({together}) => together[when]);
			return [
				percentText(shareOf(errors, error => Math.abs(error) <= 1)),
				quantileOf(errors, 0.05).toFixed(1),
				quantileOf(errors, 0.5).toFixed(1),
				quantileOf(errors, 0.95).toFixed(1),
			];
		});
		return [[kit, `${runs.length}`, ...cells]];
	});
	return [
		'Both subs against the target, dB as the meter shows it, before and after the reading together',
		...table([
			['kit', 'rooms', 'before ±1', '5 %', '50 %', '95 %', 'after ±1', '5 %', '50 %', '95 %'],
			...rows,
		]),
	];
}

export const togetherBars = (all: readonly BlendRun[]): Bar[] =>
	(['known', 'hidden'] as const).map(kit => ({
		what: `subs together, ${kit}: within 1 dB of the target after the reading`,
		share: shareOf(
			all.filter(run => run.kit === kit),
			({together}) => Math.abs(together.afterDb) <= 1,
		),
		atLeast: 95,
	}));
