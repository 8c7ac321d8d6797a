import type {KitKind} from '../gear.ts';
import type {PairGains, PairRound} from '../round.ts';
import {type Bar, percentText, shareOf, table} from './share.ts';

/** What a change between the subs did in one room. */
export type PairRun = PairRound & {readonly room: string; readonly kit: KitKind};

/** A change of this much is won or lost, dB. */
const tellingDb = 0.3;
type What = keyof PairGains;
type When = 'alone' | 'whole';
const won = (when: When, what: What) => (run: PairRun) => run[when][what] >= tellingDb;
const lost = (when: When, what: What) => (run: PairRun) => run[when][what] <= -tellingDb;

function threeWay(runs: readonly PairRun[], when: When, what: What): string {
	const [wins, losses] = [shareOf(runs, won(when, what)), shareOf(runs, lost(when, what))];
	const tied = {held: runs.length - wins.held - losses.held, of: runs.length};
	const mean = runs.reduce((sum, run) => sum + run[when][what], 0) / runs.length;
	const shares = [wins, tied, losses].map(share => percentText(share).replace(' %', '')).join('/');
	return `${shares} ${mean.toFixed(2)}`;
}

const kits = ['known', 'hidden'] as const;

export function pairLines(all: readonly PairRun[]): string[] {
	const rows = kits.flatMap(kit => {
		const runs = all.filter(run => run.kit === kit);
		if (runs.length === 0) return [];
		const readings = runs.reduce((sum, run) => sum + run.readings, 0) / runs.length;
		return (['alone', 'whole'] as const).map(when => [
			`${kit}, ${when === 'alone' ? 'subs alone' : 'then tones'}`,
			`${runs.length}`,
			percentText(shareOf(runs, ({isKept}) => isKept)),
			...(['lfe', 'fronts', 'FC'] as const).map(what => threeWay(runs, when, what)),
			readings.toFixed(0),
		]);
	});
	return [
		'A change between the subs, then tones, against distances alone: won/tied/lost % at 0.3 dB, and mean dB',
		...table([['kit', 'rooms', 'kept', 'LFE 28-112 Hz', 'fronts', 'FC', 'readings'], ...rows]),
	];
}

export function pairBars(all: readonly PairRun[]): Bar[] {
	return kits.flatMap((kit): Bar[] => {
		const runs = all.filter(run => run.kit === kit);
		return (['alone', 'whole'] as const).flatMap(when =>
			(
				[
					['lfe', 'bass of the LFE channel'],
					['fronts', 'mean of the fronts'],
					['FC', 'centre'],
				] as const
			).map(([what, name]) => ({
				what: `change between subs${when === 'whole' ? ', then tones' : ''}, ${kit}: lost on the ${name}`,
				share: shareOf(runs, lost(when, what)),
				atMost: 5,
			})),
		);
	});
}
