import {listed} from '../../profile/names.ts';
import {formatNumber} from '../../profile/units/decimalText.ts';
import type {TimingEntry, TimingFacts} from '../../study/calibration/timing/facts.ts';
import {formatEntry} from '../entryText.ts';
import {ms} from './figures.ts';
import type {Say} from './say.ts';
import type {Sentences} from './sentences.ts';

/** Far below any step. */
const roundingMetres = 1e-9;

function entryText(entry: TimingEntry, {name}: Say): string {
	if (entry.kind === 'distance') {
		const {receiverSpeed, exactMetres, steppedMetres, shownAs} = entry;
		const exact = formatEntry(exactMetres, {...shownAs, stepMetres: Math.min(shownAs.stepMetres, 0.01)});
		const isNearest = Math.abs(steppedMetres - exactMetres) <= shownAs.stepMetres / 2 + roundingMetres;
		const why = isNearest ? '' : '; all entries are chosen together, so that they fit each other best';
		return `with the receiver’s ${formatNumber(receiverSpeed, 1)} m/s that is ${exact}, entered as ${formatEntry(steppedMetres, shownAs)}${why}`;
	}

	const {exactMs, steppedMs, last} = entry;
	return last
		? `${name(last.id)} comes last after ${ms(last.arrivalMs, 2)}, so ${ms(exactMs, 2)}, entered as ${ms(steppedMs, 2)}`
		: `the latest arrival, so the others wait for it; entered as ${ms(steppedMs, 2)}`;
}

function lostText({outliers}: TimingFacts['timing-spread-does-not-fit'], {name}: Say): string {
	const parts = outliers.map(
		({id, lateMs}) => `${name(id)} arrives ${ms(Math.abs(lateMs))} ${lateMs > 0 ? 'late' : 'early'}`,
	);
	return `With these settings ${listed(parts)} against most others.`;
}

function remedyText(
	{remedy, lostMs}: TimingFacts['timing-spread-does-not-fit'],
	{name, length}: Say,
): string {
	return remedy.kind === 'latency'
		? `To fix it: lower the ${ms(remedy.milliseconds)} of latency at ${remedy.at} by ${ms(lostMs)}, or connect ${name(remedy.id)} without it.`
		: `To fix it: bring ${name(remedy.nearer)} ${length(remedy.metres)} nearer, or set ${name(remedy.farther)} that much farther away.`;
}

export const timingSentences: Sentences<TimingFacts> = {
	'distance-from-recording': ({metres, sigmaMetres}, {length}) => [
		`${length(metres)} by its sound, give or take ${length(sigmaMetres)}; it was not taped`,
	],
	'distance-from-network': ({metres, directMetres}, {length}) => {
		if (directMetres === undefined)
			return [`${length(metres)} follows from the other tape readings; it was not read directly`];
		// Where both read alike, no number is needed, and several are told at once.
		return length(metres) === length(directMetres)
			? ['all tape readings together are surer than the distance read directly, and agree with it']
			: [
					`${length(metres)} from all tape readings together, surer than the ${length(directMetres)} read directly`,
				];
	},
	'distance-suspected': ({readMetres, networkMetres}, {length}) => [
		`${length(readMetres)} read, but the other tape readings make it ${length(networkMetres)}`,
		'Measure it once more.',
	],
	'tape-spread': ({metres, differenceMetres, repeats}, {length}) => [
		`${length(metres)}, ${length(Math.abs(differenceMetres))} ${differenceMetres > 0 ? 'longer' : 'shorter'} than its repeat${repeats > 1 ? 's' : ''}`,
		'Measure it once more, from the same point at the speaker to the ear.',
	],
	'timing-reason': ({metres, metresPerSecond, latencies, arrivalMs, entry}, say) => {
		const late = latencies.map(({at, milliseconds}) => ` and ${ms(milliseconds)} at ${at}`).join('');
		return [
			`${say.length(metres)} at ${formatNumber(metresPerSecond, 1)} m/s${late} make ${ms(arrivalMs, 2)}; ${entryText(entry, say)}`,
		];
	},
	'distances-shifted-together': ({metres}, {length}) => [
		`all distances to enter are ${length(Math.abs(metres))} ${metres < 0 ? 'shorter' : 'longer'} than measured, all by the same, so that they fit the receiver’s steps and range`,
		'Only their differences make delays: enter them as they are.',
	],
	'entry-holds-latency': ({metres, latencies}, {length}) => [
		`the distance to enter is ${length(metres)} longer than the tape’s on purpose: so the others wait for ${listed(latencies.map(({at, milliseconds}) => `the ${ms(milliseconds)} of latency at ${at}`))}`,
	],
	'timing-spread-does-not-fit': (facts, say) => [
		`the arrivals differ by ${ms(facts.spreadMs)}; the receiver evens out ${ms(facts.rangeMs)}`,
		`Lost: ${ms(facts.lostMs)}.`,
		lostText(facts, say),
		remedyText(facts, say),
	],
	'subs-share-output': ({subs, apartMs}, {name}) => [
		`${listed(subs.map(name))} hang on this one output and arrive ${ms(apartMs)} apart`,
		'Nothing can be set to change that; the middle is used. To fix it: give each its own output.',
	],
};
