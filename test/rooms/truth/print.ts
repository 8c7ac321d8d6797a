import {blendBars, blendLines, togetherBars, togetherLines} from './blendShare.ts';
import {lineBars, lineLines} from './lineShare.ts';
import {pairBars, pairLines} from './pairShare.ts';
import {proofBars, proofLines} from './proofShare.ts';
import {recordBars, recordLines} from './recordShare.ts';
import type {Truth, TruthOptions} from './run.ts';
import {type Bar, barLine, percentText, rms, shareOf, table} from './share.ts';
import {tapeBars, tapeLines} from './tapeShare.ts';

function levelLines({levels}: Truth): string[] {
	const rows = [1, 3, 5].map(points => {
		const own = levels.filter(one => one.points === points);
		const within = (factor: number) =>
			percentText(shareOf(own, ({errorDb, sigmaDb}) => Math.abs(errorDb) <= factor * sigmaDb));
		const rmsText = (of: (one: (typeof own)[number]) => number) => rms(own.map(of)).toFixed(2);
		return [
			`${points}`,
			`${own.length}`,
			rmsText(({errorDb}) => errorDb),
			rmsText(({sigmaDb}) => sigmaDb),
			within(1),
			within(1.96),
		];
	});
	return [
		'Trims by one reading at each point, against 250 to 8000 Hz over nine points of the seat',
		...table([['points', 'channels', 'error dB', 'stated dB', '1 sigma', '1.96 sigma'], ...rows]),
	];
}

function levelBars({levels}: Truth): Bar[] {
	return [1, 3, 5].map(points => ({
		what: `trims by ${points === 1 ? 'one point' : `${points} points`}: within 1.96 sigma of what the seat hears`,
		share: shareOf(
			levels.filter(one => one.points === points),
			({errorDb, sigmaDb}) => Math.abs(errorDb) <= 1.96 * sigmaDb,
		),
		atLeast: 90,
		atMost: 99,
	}));
}

function crossoverLines({crossovers}: Truth): string[] {
	const other = crossovers.filter(({hertz}) => hertz !== 80);
	const three = (among: typeof other, gain: 'rippleGainDb' | 'lossGainDb') =>
		[
			shareOf(among, one => one[gain] >= 0.2),
			shareOf(among, one => Math.abs(one[gain]) < 0.2),
			shareOf(among, one => one[gain] <= -0.2),
		]
			.map(({held}) => held)
			.join('/');
	return [
		`Crossovers chosen against 80 Hz: ${crossovers.length} channels, another one in ${other.length} of them (w/t/l at 0.2 dB)`,
		...table([
			['', 'channels', 'ripple where loudest', 'loss by distances'],
			...[true, false].map(isBound => {
				const among = other.filter(one => one.isBound === isBound);
				return [
					isBound ? 'limit above 80 Hz' : 'free to take 80 Hz',
					`${among.length}`,
					three(among, 'rippleGainDb'),
					three(among, 'lossGainDb'),
				];
			}),
		]),
	];
}

export function barsOf(truth: Truth): Bar[] {
	return [
		...blendBars(truth.blend),
		...togetherBars(truth.blend),
		...proofBars(truth.proof),
		...tapeBars(truth.tape),
		...recordBars(truth.hear),
		...lineBars(truth.lines),
		...pairBars(truth.pair),
		...levelBars(truth),
	].filter(({share}) => share.of > 0);
}

/** All tables and bars as text. */
export function truthText(truth: Truth, {range, from, count}: TruthOptions): string {
	const ways = [
		['Blend by tones, against distances alone (won, tied, lost at 0.3 dB)', truth.blend],
		['Blend by the loudest of ten settings', truth.search],
	] as const;
	const parts = [
		[`Rooms ${from} to ${from + count - 1} of the range "${range}"`],
		...ways.flatMap(([title, runs]) => (runs.length > 0 ? [blendLines(title, runs)] : [])),
		...(truth.blend.length > 0 ? [togetherLines(truth.blend)] : []),
		...(truth.proof.length > 0 ? [proofLines(truth.proof)] : []),
		...(truth.hear.length > 0 ? [recordLines(truth.hear)] : []),
		...(truth.pair.length > 0 ? [pairLines(truth.pair)] : []),
		...(truth.lines.length > 0 ? [lineLines(truth.lines)] : []),
		...(truth.tape.length > 0 ? [tapeLines(truth.tape)] : []),
		...(truth.levels.length > 0 ? [levelLines(truth)] : []),
		...(truth.crossovers.length > 0 ? [crossoverLines(truth)] : []),
		['Bars', ...barsOf(truth).map(barLine)],
	];
	return `${parts.map(lines => lines.join('\n')).join('\n\n')}\n`;
}
