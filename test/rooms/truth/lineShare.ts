import type {LineRun} from '../heardLines.ts';
import {type Bar, percentText, quantileOf, type Share, shareOf, table} from './share.ts';

const isMain = ({id}: LineRun) => id !== 'LFE1';
const arrives = ({arrivalErrorMs}: LineRun) => Math.abs(arrivalErrorMs ?? Number.POSITIVE_INFINITY) <= 0.05;
const isSurelyThere = ({arrivalErrorMs, sigmaMs}: LineRun) =>
	Math.abs(arrivalErrorMs ?? Number.POSITIVE_INFINITY) <= 1.96 * (sigmaMs ?? 0);
const isTurnedRight = ({isPolarityRight}: LineRun) => isPolarityRight === true;
const isLevel = ({levelErrorDb}: LineRun) => Math.abs(levelErrorDb ?? Number.POSITIVE_INFINITY) <= 0.3;

type Decay = LineRun['decays'][number];
const isStated = ({error}: Decay) => error !== undefined;
const isLow = ({hertz}: Decay) => hertz < 200;
const decays = (runs: readonly LineRun[], isIn: (one: Decay) => boolean) =>
	runs.flatMap(run => run.decays).filter(isIn);
const heldT20 = (all: readonly Decay[]): Share =>
	shareOf(all.filter(isStated), one => Math.abs(one.error!) <= (isLow(one) ? 0.15 : 0.05));

const groups: ReadonlyArray<readonly [string, (run: LineRun) => boolean]> = [
	['all mains', isMain],
	['plain, sound', run => isMain(run) && run.kind === 'plain' && !run.hasTurnedTweeter],
	['tweeter turned', run => isMain(run) && run.kind === 'plain' && run.hasTurnedTweeter],
	['dipole', run => run.kind === 'dipole'],
	['upward-firing', run => run.kind === 'upward'],
	['LFE', run => !isMain(run)],
];

export function lineLines(all: readonly LineRun[]): string[] {
	const rows = groups.flatMap(([name, isIn]) => {
		const runs = all.filter(isIn);
		if (runs.length === 0) return [];
		const errors = runs.filter(isMain).flatMap(({arrivalErrorMs}) => arrivalErrorMs ?? []);
		const [low, high] = [decays(runs, isLow), decays(runs, one => !isLow(one))];
		return [
			[
				name,
				`${runs.length}`,
				...(errors.length > 0
					? [
							percentText(shareOf(runs, arrives)),
							percentText(shareOf(runs, isSurelyThere)),
							quantileOf(errors.map(Math.abs), 0.95).toFixed(3),
							percentText(shareOf(runs, isTurnedRight)),
						]
					: ['-', '-', '-', '-']),
				percentText(shareOf(runs, isLevel)),
				percentText(shareOf(low, isStated)),
				percentText(heldT20(low)),
				percentText(shareOf(high, isStated)),
				percentText(heldT20(high)),
			],
		];
	});
	return [
		'Lines heard 30 dB above the noise of the room: arrival within 0.05 ms, level within 0.3 dB, T20 within 5 % (15 % below 200 Hz)',
		...table([
			[
				'speaker',
				'lines',
				'arrival',
				'1.96 sigma',
				'95 % ms',
				'polarity',
				'level',
				'T20 low told',
				'right',
				'T20 told',
				'right',
			],
			...rows,
		]),
	];
}

export function lineBars(all: readonly LineRun[]): Bar[] {
	const mains = all.filter(isMain);
	const every = decays(all, () => true);
	return [
		{what: 'lines: arrival within 0.05 ms', share: shareOf(mains, arrives), atLeast: 99},
		{what: 'lines: arrival within 1.96 sigma', share: shareOf(mains, isSurelyThere), atLeast: 95},
		{what: 'lines: polarity right', share: shareOf(mains, isTurnedRight), atLeast: 99},
		{what: 'lines: level within 0.3 dB', share: shareOf(all, isLevel), atLeast: 99},
		{what: 'lines: T20 right where told', share: heldT20(every), atLeast: 99},
		// Refusing all of them would keep the bar above.
		{what: 'lines: T20 told', share: shareOf(every, isStated), atLeast: 80},
	];
}
