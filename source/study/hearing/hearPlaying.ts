import {usualMainsBand, usualSubBand} from '../../profile/practice.ts';
import {type SplitterTools, splitterTools} from '../../science/signal/bandPower.ts';
import type {Sound} from '../../science/signal/waveRead.ts';
import type {OnsetFound} from './arrivals.ts';
import {checkPlaying} from './checks/checkPlaying.ts';
import {clarityOf} from './clarity.ts';
import {cutPlaying, type KnownClock} from './cutPlaying.ts';
import {octaveDecays, splitImpulse} from './decay.ts';
import type {FoundMark} from './findPlayings.ts';
import type {HeardLine, HeardPlaying} from './heardPlaying.ts';
import type {Impulse} from './impulses.ts';
import {noiseBelowDb} from './noise.ts';
import {polarityOf} from './polarity.ts';
import type {HearingProgress} from './progress.ts';
import {bandLevelDb, impulseSpectrum, responseAt, responseFrequencies} from './responses.ts';
import type {PlayedRound} from './round.ts';
import {stretchesOf} from './stretches.ts';

/** Long enough for a bass that takes a second to die away, ms. */
const window = {beforeMs: 60, afterMs: 950};

/**
One playing, from its mark to what each line does: every sweep cut by the recorder's clock and read.

@param channel - Channel of the recording that is listened to.
@param known - The clock that an earlier playing of the recording was cut by.
*/
export function* hearPlaying(
	sound: Sound,
	channel: number,
	mark: FoundMark,
	known?: KnownClock,
): Generator<HearingProgress, {readonly heard: HeardPlaying; readonly clock: KnownClock}> {
	const {round, clock, startSample, impulses, onsetOf} = yield* cutPlaying(sound, channel, mark, known);
	const lines: HeardLine[] = [];
	const onsets = new Map(
		round.channels.flatMap(id => {
			const impulse = directImpulse(round, impulses, id);
			const onset = impulse && onsetOf(impulse);
			return onset ? [[id, onset] as const] : [];
		}),
	);
	const reference = onsets.get(round.channels[0]!)?.ms ?? 0;
	const tools = splitterTools(Math.max(4, ...impulses.map(({samples}) => samples.length)));
	for (const id of round.channels) {
		const impulse = impulses.find(({sweep}) => sweep.channel === id && sweep.pass === 'main');
		const direct = directImpulse(round, impulses, id);
		if (!impulse || !direct) continue;
		yield {step: 'judging', done: lines.length, of: round.channels.length};
		lines.push(heardLine(impulse, direct, onsets.get(id), reference, tools));
	}

	const heard = {
		atSeconds: startSample / sound.sampleRateHz,
		round,
		clockPpm: clock.ppm,
		lines,
		impulses,
		peak: 0,
		findings: [],
	};
	const recorded = {sound, channel, startSample, rateHz: clock.cutter.rateHz};
	return {heard: checkPlaying(heard, recorded, stretchesOf(impulses, onsetOf)), clock};
}

/** The sweep that reaches above 1 kHz, from which arrival, polarity and level are read. */
function directImpulse(round: PlayedRound, impulses: readonly Impulse[], id: string): Impulse | undefined {
	const pass = round.size === 'bass' && !id.startsWith('LFE') ? 'soft' : 'main';
	return impulses.find(({sweep}) => sweep.channel === id && sweep.pass === pass);
}

function heardLine(
	impulse: Impulse,
	direct: Impulse,
	onset: OnsetFound | undefined,
	referenceMs: number,
	tools: SplitterTools,
): HeardLine {
	const id = impulse.sweep.channel;
	const isSub = id.startsWith('LFE');
	const at = onset?.ms ?? referenceMs;
	// A sub behind a main line may sound before it does: one window about what all lines share.
	const spectrum = impulseSpectrum(impulse, Math.min(at, referenceMs), window);
	// The meter's own bands, so that levels of both can be held against each other.
	const band = isSub ? usualSubBand : usualMainsBand;
	const split = splitImpulse(impulse, tools);
	const level = direct === impulse ? spectrum : impulseSpectrum(direct, at, window);
	return {
		channel: id,
		isSub,
		...(onset && {delayMs: onset.ms - referenceMs, sigmaMs: onset.sigmaMs, onset}),
		...(onset && !isSub && {polarity: polarityOf(direct, onset.ms)}),
		...(onset && {levelDb: bandLevelDb(level, band.fromHertz, band.toHertz)}),
		bassLevelDb: bandLevelDb(spectrum, usualSubBand.fromHertz, usualSubBand.toHertz),
		noiseBelowDb: noiseBelowDb(direct, at, isSub),
		decays: onset ? octaveDecays(impulse, at, split) : [],
		...(onset && !isSub && impulse === direct && {clarity: clarityOf(impulse, at, split)}),
		response: responseAt(spectrum, responseFrequencies(), referenceMs),
		upToHertz: Math.min(impulse.sweep.law.fadesFromHertz, 0.44 * impulse.rateHz),
		impulse,
		direct,
	};
}
