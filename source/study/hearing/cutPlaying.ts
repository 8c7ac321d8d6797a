import type {Sound} from '../../science/signal/waveRead.ts';
import {type OnsetFound, onsetOf} from './arrivals.ts';
import {clockPpm} from './clock.ts';
import type {FoundMark} from './findPlayings.ts';
import {type Impulse, type ImpulseCutter, impulseCutter} from './impulses.ts';
import type {HearingProgress} from './progress.ts';
import {type PlayedRound, playedRound, type RoundSweep} from './round.ts';
import {stretchesOf} from './stretches.ts';

/** Where the recorder's clock is looked for, ppm; the first is nearly always right. */
const clockGuessesPpm = [0, -400, 400] as const;
/** A clock that is known to this is taken as it is: 1 µs over the longest sweep. */
const clockWithinPpm = 0.15;
/** A recorder's clock, ppm faster than the player's, and what cuts by it. */
export type KnownClock = {readonly ppm: number; readonly cutter: ImpulseCutter};

/** A playing cut into the impulse responses of its sweeps. */
export type CutPlaying = {
	readonly round: PlayedRound;
	readonly clock: KnownClock;
	/** Where the file began in the recording, samples. */
	readonly startSample: number;
	/** Of all sweeps that the recording holds, in the order of time. */
	readonly impulses: readonly Impulse[];
	/** First sound of one of them, looked for once. */
	readonly onsetOf: (impulse: Impulse) => OnsetFound | undefined;
};

/**
The clock first, by the sweeps that come twice, then every sweep cut by it.

@param known - The clock that an earlier playing of the recording was cut by: a recorder's drifts little.
*/
export function* cutPlaying(
	sound: Sound,
	channel: number,
	mark: FoundMark,
	known?: KnownClock,
): Generator<HearingProgress, CutPlaying> {
	const round = playedRound(mark.size, mark.channels);
	const nominal = sound.sampleRateHz;
	const of = 2 * round.channels.length + 8;
	let step = 0;
	const onsets = new Map<Impulse, OnsetFound | undefined>();
	const onsetOnce = (impulse: Impulse) => {
		if (!onsets.has(impulse)) onsets.set(impulse, onsetOf(impulse, impulse.sweep.channel.startsWith('LFE')));
		return onsets.get(impulse);
	};
	const roughStart = mark.atSample - round.markAtSeconds * nominal;
	const there = round.sweeps.filter(
		({atSeconds, law}) => roughStart + (atSeconds + law.seconds + 0.25) * nominal <= sound.length,
	);
	const twice = there.filter(({channel: id}) => id === round.channels[0]);
	function* cutBy({cutter}: KnownClock, sweeps: readonly RoundSweep[], cuts: Map<RoundSweep, Impulse>) {
		const startSample = mark.atSample - round.markAtSeconds * cutter.rateHz;
		for (const sweep of sweeps) {
			if (cuts.has(sweep)) continue;
			yield {step: 'cutting', done: Math.min(of, ++step), of} as const;
			cuts.set(sweep, cutter.cut(sound, channel, startSample, sweep));
		}

		return {startSample, impulses: sweeps.map(sweep => cuts.get(sweep)!)};
	}

	// With the clock unknown a sweep is smeared by what the clock is off over its length, both of a pair alike; one that is off
	// so far that nothing stands out is looked for on either side.
	let clock = known ?? clockOf(nominal, 0);
	let cuts = new Map<RoundSweep, Impulse>();
	for (const guess of clockGuessesPpm) {
		const guessed = guess === 0 ? clock : clockOf(nominal, guess);
		const tried = new Map<RoundSweep, Impulse>();
		const stretches = stretchesOf((yield* cutBy(guessed, twice, tried)).impulses, onsetOnce);
		if (stretches.length === 0) continue;
		const off = clockPpm(stretches);
		if (Math.abs(off) > clockWithinPpm) clock = clockOf(nominal, guessed.ppm + off);
		else [clock, cuts] = [guessed, tried];
		break;
	}

	return {round, clock, onsetOf: onsetOnce, ...(yield* cutBy(clock, there, cuts))};
}

const clockOf = (nominalRateHz: number, ppm: number): KnownClock => ({
	ppm,
	cutter: impulseCutter(nominalRateHz * (1 + ppm * 1e-6)),
});
