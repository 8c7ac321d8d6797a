import type {HeardLine} from '../../source/study/hearing/heardPlaying.ts';
import type {PlayedRound} from '../../source/study/hearing/round.ts';
import {hearSamples} from '../study/hearing/simulated/hear.ts';
import {playRound, recordSound} from '../study/hearing/simulated/play.ts';
import {pinkLevelDb, reverberations} from './lineFigures.ts';
import {
	drawBoxes,
	type LineTruth,
	linesOf,
	listeningRound,
	playerRate,
	type SpeakerKind,
} from './listening.ts';
import {type Draws, drawsOf} from './physics/random.ts';
import type {World} from './world.ts';

/** One line as it was heard, against what is true of it. */
export type LineRun = {
	readonly room: string;
	readonly id: LineTruth['id'];
	readonly kind: SpeakerKind;
	readonly hasTurnedTweeter: boolean;
	readonly reverberationSeconds: number;
	/** Root mean square of the middle speaker's sweep above that of the noise from 20 Hz to 20 kHz, dB. */
	readonly noiseDistanceDb: number;
	/** Absent where the line was called silent; the nearer of two where two are given. */
	readonly arrivalErrorMs?: number;
	readonly sigmaMs?: number;
	readonly isPolarityRight?: boolean;
	readonly clearness?: number;
	readonly levelErrorDb?: number;
	/** Relative; absent where refused. */
	readonly decays: ReadonlyArray<{readonly hertz: number; readonly error?: number}>;
};

/** A round as it was recorded at a room's seat. */
export type RoomRecording = {
	readonly world: Pick<World, 'seed' | 'reverberationSeconds'>;
	readonly lines: readonly LineTruth[];
	readonly noiseDistanceDb: number;
	readonly samples: Float64Array;
	readonly rateHz: number;
	/** Of the recorder. */
	readonly gain: number;
};

/** Plays a round in a room and records it at some distances of noise, by recorders of other rates and clocks. */
export function* roomRecordings(world: World, noiseDistancesDb: readonly number[]): Generator<RoomRecording> {
	const draws = drawsOf(`lines ${world.seed}`);
	const lines = linesOf(world, drawBoxes(draws.branch('boxes')), draws.branch('kinds'));
	const round = listeningRound();
	const sound = playRound(round, new Map(lines.map(({channel, impulse}) => [channel, impulse])));
	const middle = middleSweep(sound, round);
	const gain = 0.5 / largest(sound);
	for (const noiseDistanceDb of noiseDistancesDb) {
		const own = draws.branch(`${noiseDistanceDb}`);
		const rateHz = own.pick([44_100, 48_000]);
		const samples = recordSound(sound, {rateHz, ppm: own.uniform(-100, 100), noiseDbfs: -110, gain});
		addPink(samples, rateHz, gain * middle * 10 ** (-noiseDistanceDb / 20), own);
		yield {world, lines, noiseDistanceDb, samples, rateHz, gain};
	}
}

/** What the product makes of a recording, line by line. */
export function lineRuns({world, lines, noiseDistanceDb, samples, rateHz, gain}: RoomRecording): LineRun[] {
	// A round that is not found counts against every line of it.
	const {playings} = hearSamples(samples, rateHz);
	const heard = new Map(playings.length === 1 ? playings[0]!.lines.map(line => [line.channel, line]) : []);
	return lines.map(line => {
		const found = heard.get(line.channel);
		return {
			room: world.seed,
			id: line.id,
			kind: line.kind,
			hasTurnedTweeter: line.hasTurnedTweeter,
			reverberationSeconds: world.reverberationSeconds,
			noiseDistanceDb,
			...(found && against(line, lines[0]!, found, gain)),
			decays: found ? decaysAgainst(line, found) : [],
		};
	});
}

function against(line: LineTruth, first: LineTruth, found: HeardLine, gain: number) {
	const wanted = line.arrivalMs - first.arrivalMs;
	const {delayMs, onset, polarity, levelDb} = found;
	const isSub = line.id === 'LFE1';
	const errors = [delayMs, onset?.later && delayMs! + onset.later.ms - onset.ms].flatMap(ms =>
		ms === undefined ? [] : [ms - wanted],
	);
	const band = isSub ? ([28.2, 112.2] as const) : ([355, 2818] as const);
	return {
		...(errors.length > 0 && {
			arrivalErrorMs: errors.reduce((best, error) => (Math.abs(error) < Math.abs(best) ? error : best)),
			sigmaMs: found.sigmaMs!,
		}),
		...(polarity && {isPolarityRight: polarity.sign === line.sign, clearness: polarity.clearness}),
		...(levelDb !== undefined && {
			levelErrorDb: levelDb - 20 * Math.log10(gain) - pinkLevelDb(line.impulse, band),
		}),
	};
}

function decaysAgainst(line: LineTruth, {decays}: HeardLine): LineRun['decays'] {
	const asked = decays.filter(({t20Seconds}) => t20Seconds !== undefined).map(({hertz}) => hertz);
	const truths = reverberations(line.impulse, line.arrivalMs / 1000, asked);
	return decays.map(({hertz, t20Seconds}) =>
		t20Seconds === undefined ? {hertz} : {hertz, error: t20Seconds / truths[asked.indexOf(hertz)]! - 1},
	);
}

function largest(samples: Float64Array): number {
	let most = 0;
	for (const value of samples) most = Math.max(most, Math.abs(value));
	return most;
}

/** Root mean square of each main speaker's loud sweep where it is heard, the middle one of them. */
function middleSweep(sound: Float64Array, {sweeps}: PlayedRound): number {
	const sizes = sweeps
		.filter(({pass, channel}) => pass === 'main' && channel !== 'LFE1')
		.map(({atSeconds, law}) => {
			const from = Math.round(atSeconds * playerRate);
			const part = sound.subarray(from, from + Math.round(law.seconds * playerRate));
			return Math.sqrt(part.reduce((sum, value) => sum + value * value, 0) / part.length);
		})
		.sort((one, other) => one - other);
	return sizes[Math.floor(sizes.length / 2)]!;
}

/** Adds the noise of a room, pink from 20 Hz to 20 kHz, of a root mean square. */
function addPink(samples: Float64Array, rateHz: number, rms: number, draws: Draws): void {
	let [a, b, c] = [0, 0, 0];
	const size = rms / Math.sqrt(Math.log(1000) * pinkDensity(rateHz));
	for (let index = 0; index < samples.length; index++) {
		const white = draws.gauss(1);
		// Three first-order low-passes and white noise: pink within 0.5 dB from 10 Hz to 20 kHz. Common practice, no source.
		a = 0.99765 * a + 0.099046 * white;
		b = 0.963 * b + 0.2965164 * white;
		c = 0.57 * c + 1.0526913 * white;
		samples[index]! += size * (a + b + c + 0.1848 * white);
	}
}

/** Density of the pink filter at 1 kHz times 1 kHz, per unit of white variance: |H|²·2/rate·f. */
function pinkDensity(rateHz: number): number {
	const angle = (2 * Math.PI * 1000) / rateHz;
	const [x, y] = [Math.cos(angle), -Math.sin(angle)];
	let [re, im] = [0.1848, 0];
	for (const [pole, gain] of [
		[0.99765, 0.099046],
		[0.963, 0.2965164],
		[0.57, 1.0526913],
	] as const) {
		const [p, q] = [1 - pole * x, -pole * y];
		re += (gain * p) / (p * p + q * q);
		im -= (gain * q) / (p * p + q * q);
	}

	return ((re * re + im * im) * 2 * 1000) / rateHz;
}
