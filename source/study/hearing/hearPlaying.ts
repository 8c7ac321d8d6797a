import type {Sound} from '../../science/signal/waveRead.ts';
import {type OnsetFound, onsetOf} from './arrivals.ts';
import {checkPlaying} from './checks/checkPlaying.ts';
import {clarityOf} from './clarity.ts';
import {clockPpm} from './clock.ts';
import {octaveDecays, splitImpulse} from './decay.ts';
import type {FoundMark} from './findPlayings.ts';
import type {HeardLine, HeardPlaying} from './heardPlaying.ts';
import {type Impulse, impulseCutter} from './impulses.ts';
import {noiseBelowDb} from './noise.ts';
import {polarityOf} from './polarity.ts';
import type {HearingProgress} from './progress.ts';
import {bandLevelDb, impulseSpectrum, responseAt, responseFrequencies} from './responses.ts';
import {type PlayedRound, playedRound, type RoundSweep} from './round.ts';
import {stretchesOf} from './stretches.ts';

/** The meter's bands, hertz: third-octaves 400 Hz to 2.5 kHz for mains, 31.5 to 100 Hz for subs. */
const mainsBandHertz = [355, 2818] as const;
const bassBandHertz = [28.2, 112.2] as const;
/** Where the recorder's clock is looked for, ppm; the first is nearly always right. */
const clockGuessesPpm = [0, -400, 400] as const;
/** Long enough for a bass that takes a second to die away, ms. */
const window = {beforeMs: 60, afterMs: 950};

/**
One playing, from its mark to what each line does: the clock first, by the sweeps that come twice, then every sweep cut
by it and read.

@param channel - Channel of the recording that is listened to.
*/
export function* hearPlaying(
	sound: Sound,
	channel: number,
	mark: FoundMark,
): Generator<HearingProgress, HeardPlaying> {
	const round = playedRound(mark.size, mark.channels);
	const nominal = sound.sampleRateHz;
	let step = 0;
	const of = 2 * round.channels.length + 8;
	const progress = (): HearingProgress => ({step: 'cutting', done: Math.min(of, ++step), of});

	const roughStart = mark.atSample - round.markAtSeconds * nominal;
	const isThere = (sweep: RoundSweep) =>
		roughStart + (sweep.atSeconds + sweep.law.seconds + 0.25) * nominal <= sound.length;
	const there = round.sweeps.filter(isThere);
	const first = round.channels[0]!;
	const firstSweeps = there.filter(each => each.channel === first);
	let ppm = 0;
	// With the clock unknown a sweep is smeared by what the clock is off over its length, both of a pair alike; one that is off
	// so far that nothing stands out is looked for on either side.
	for (const guess of clockGuessesPpm) {
		const guessed = nominal * (1 + guess * 1e-6);
		const roughly = impulseCutter(sound, channel, mark.atSample - round.markAtSeconds * guessed, guessed);
		const firsts: Impulse[] = [];
		for (const sweep of firstSweeps) {
			yield progress();
			firsts.push(roughly(sweep));
		}

		const stretches = stretchesOf(firsts);
		if (stretches.length === 0) continue;
		ppm = guess + clockPpm(stretches);
		break;
	}

	const rate = nominal * (1 + ppm * 1e-6);
	const start = mark.atSample - round.markAtSeconds * rate;
	const cut = impulseCutter(sound, channel, start, rate);
	const impulses: Impulse[] = [];
	for (const sweep of there) {
		yield progress();
		impulses.push(cut(sweep));
	}

	const lines: HeardLine[] = [];
	const of0 = onsets(round, impulses);
	const reference = of0.get(first)?.ms ?? 0;
	for (const id of round.channels) {
		const impulse = impulses.find(({sweep}) => sweep.channel === id && sweep.pass === 'main');
		const direct = directImpulse(round, impulses, id);
		if (!impulse || !direct) continue;
		yield {step: 'judging', done: lines.length, of: round.channels.length};
		lines.push(heardLine(impulse, direct, of0.get(id), reference));
	}

	const heard = {
		atSeconds: start / nominal,
		round,
		clockPpm: ppm,
		lines,
		impulses,
		peak: 0,
		findings: [],
	};
	return checkPlaying(heard, sound, channel, start, rate);
}

/** The sweep that reaches above 1 kHz, from which arrival, polarity and level are read. */
function directImpulse(round: PlayedRound, impulses: readonly Impulse[], id: string): Impulse | undefined {
	const pass = round.size === 'bass' && !id.startsWith('LFE') ? 'soft' : 'main';
	return impulses.find(({sweep}) => sweep.channel === id && sweep.pass === pass);
}

function onsets(round: PlayedRound, impulses: readonly Impulse[]): Map<string, OnsetFound> {
	const found = new Map<string, OnsetFound>();
	for (const id of round.channels) {
		const impulse = directImpulse(round, impulses, id);
		const onset = impulse && onsetOf(impulse, id.startsWith('LFE'));
		if (onset) found.set(id, onset);
	}

	return found;
}

function heardLine(
	impulse: Impulse,
	direct: Impulse,
	onset: OnsetFound | undefined,
	referenceMs: number,
): HeardLine {
	const id = impulse.sweep.channel;
	const isSub = id.startsWith('LFE');
	const at = onset?.ms ?? referenceMs;
	// A sub behind a main line may sound before it does: one window about what all lines share.
	const spectrum = impulseSpectrum(impulse, Math.min(at, referenceMs), window);
	const band = isSub ? bassBandHertz : mainsBandHertz;
	const split = splitImpulse(impulse);
	const level = direct === impulse ? spectrum : impulseSpectrum(direct, at, window);
	return {
		channel: id,
		isSub,
		...(onset && {delayMs: onset.ms - referenceMs, sigmaMs: onset.sigmaMs, onset}),
		...(onset && !isSub && {polarity: polarityOf(direct, onset.ms)}),
		...(onset && {levelDb: bandLevelDb(level, band[0], band[1])}),
		bassLevelDb: bandLevelDb(spectrum, bassBandHertz[0], bassBandHertz[1]),
		noiseBelowDb: noiseBelowDb(direct, at, isSub),
		decays: onset ? octaveDecays(impulse, at, split) : [],
		...(onset && !isSub && impulse === direct && {clarity: clarityOf(impulse, at, split)}),
		response: responseAt(spectrum, responseFrequencies(), referenceMs),
		upToHertz: Math.min(impulse.sweep.law.fadesFromHertz, 0.44 * impulse.rateHz),
		impulse,
		direct,
	};
}
