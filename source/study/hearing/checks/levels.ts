import {finding} from '../../../profile/finding.ts';
import {lfeGainDb} from '../../../profile/practice.ts';
import {forwardReal} from '../../../science/signal/fourier.ts';
import {powerOfTwoFrom} from '../../../science/signal/spectrumParts.ts';
import {thinned} from '../../../science/signal/thinned.ts';
import {lagBetween} from '../clock.ts';
import type {HearingFinding} from '../facts.ts';
import type {HeardLine, HeardPlaying} from '../heardPlaying.ts';
import type {Impulse} from '../impulses.ts';
import {bandLevelDb, responseFrequencies, windowedImpulse} from '../responses.ts';
import type {SweepPass} from '../round.ts';
import {pausePower, powerDbfs, type Recorded} from './recorded.ts';

/** Softer passes that come out relatively louder by this are no longer linear, dB. */
const raisedFromDb = 1;
const sleptFromDb = 4;
const window = {beforeMs: 60, afterMs: 800};

/** Levels that should follow the file and do not. */
export function levelFindings(heard: HeardPlaying, recorded: Recorded): HearingFinding[] {
	return [...gainFindings(heard, recorded), ...sleepFindings(heard), ...lfeFindings(heard)];
}

const passOf = ({impulses}: HeardPlaying, channel: string, pass: SweepPass) =>
	impulses.find(({sweep}) => sweep.channel === channel && sweep.pass === pass);

/** A gain that follows the level: the recorder's, which lifts the room's noise too, or the player's, which does not. */
function gainFindings(heard: HeardPlaying, recorded: Recorded): HearingFinding[] {
	const first = heard.round.channels[0]!;
	const onset = heard.lines.find(({channel}) => channel === first)?.onset;
	const loud = heard.impulses.find(
		({sweep}) => sweep.channel === first && sweep.pass !== 'soft' && sweep.law.toHertz > 4000,
	);
	if (!onset || !loud) return [];
	const raised = (['soft', 'softer'] as const).flatMap(pass => {
		const soft = passOf(heard, first, pass);
		if (!soft || soft === loud) return [];
		const lag = lagBetween(loud, soft, onset.ms);
		return lag.likeness > 0.7 ? [{db: lag.db, soft}] : [];
	});
	const most = raised.reduce((best, one) => (Math.abs(one.db) > Math.abs(best.db) ? one : best), {
		db: 0,
		soft: loud as Impulse,
	});
	if (Math.abs(most.db) < raisedFromDb) return [];
	const floorRise =
		powerDbfs(pausePower(recorded, most.soft.sweep)) - powerDbfs(pausePower(recorded, loud.sweep));
	const facts = {raisedDb: most.db};
	return floorRise > 0.4 * most.db
		? [finding('problem', 'heard-gain-control', [], facts)]
		: [finding('problem', 'heard-loudness-levelled', [], facts)];
}

/** Bass that comes later in the round than its line: a sub slept through the first sweeps. */
function sleepFindings(heard: HeardPlaying): HearingFinding[] {
	for (const channel of heard.round.channels) {
		const [early, late] = heard.impulses.filter(
			({sweep}) => sweep.channel === channel && (sweep.pass === 'soft' || sweep.pass === 'main'),
		);
		const again = passOf(heard, channel, 'again');
		const onset = heard.lines.find(line => line.channel === channel)?.onset;
		if (!early || !late || !onset) continue;
		const levels = [early, late, ...(again ? [again] : [])].map(impulse => bassDb(impulse, onset.ms));
		const lowDb = Math.max(...levels) - levels[0]!;
		const lowMainDb = again ? levels[2]! - levels[1]! : 0;
		const worst = Math.max(lowDb, lowMainDb);
		// Only what wakes up: bass that gets softer has other reasons.
		if (worst > sleptFromDb) return [finding('problem', 'heard-sub-slept', [channel], {lowDb: worst})];
	}

	return [];
}

/** How much of a response lies in the bass, dB; one against another. */
function bassDb(impulse: Impulse, onsetMs: number): number {
	const every = Math.max(1, Math.round(impulse.rateHz / 3000));
	const low = thinned(windowedImpulse(impulse, onsetMs, window).samples, every);
	const padded = new Float64Array(powerOfTwoFrom(low.length));
	padded.set(low);
	const binHertz = impulse.rateHz / every / padded.length;
	return bandLevelDb({spectrum: forwardReal(padded), binHertz}, 30, 90);
}

/**
Playback adds 10 dB to the LFE channel. Where all mains send their low end to the subs, 28 to 40 Hz of their sweeps and of
the LFE sweep come out of the same boxes, so that the difference shows.
*/
function lfeFindings({lines}: HeardPlaying): HearingFinding[] {
	const low = lines.find(({isSub}) => isSub);
	if (!low) return [];
	const silent = low.onset === undefined || low.noiseBelowDb < 15;
	if (silent) return [finding('problem', 'heard-lfe-silent', [low.channel])];
	const mains = lines.filter(({isSub, onset}) => !isSub && onset);
	if (mains.length === 0) return [];
	const [lfe, own] = [levelOf(low), Math.max(...mains.map(levelOf))];
	// Redirected bass is at the file's level.
	const lowDb = lfeGainDb - (lfe - own);
	return lowDb > 6 && lowDb < 14 ? [finding('doubt', 'heard-lfe-not-raised', [low.channel], {lowDb})] : [];
}

function levelOf({response}: HeardLine): number {
	let sum = 0;
	let count = 0;
	for (const [index, hertz] of responseFrequencies().entries()) {
		if (hertz < 28 || hertz > 40) continue;
		sum += response.real[index]! ** 2 + response.imaginary[index]! ** 2;
		count += 1;
	}

	return 10 * Math.log10(Math.max(sum / count, 1e-30));
}
