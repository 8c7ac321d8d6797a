import {median} from '../../science/numeric/statistics.ts';
import {lagBetween} from './clock.ts';
import type {HeardLine, HeardPlaying} from './heardPlaying.ts';

/** How one playing lies against another, by the direct sound above 1 kHz of the lines that both have. */
export type SpotShift = {
	/** Mean likeness, −1 to 1: near 1 where the microphone stood still. */
	readonly likeness: number;
	/** The second's time against the first's, ms, once both count from their first channel. */
	readonly ms: number;
	/** The second's level above the first's, dB. */
	readonly db: number;
	/** How far the microphone moved at least, metres: from how unlike the lines shifted. */
	readonly movedMetres: number;
};

const speed = 343;
/** From here on two playings were recorded at one spot. */
const sameSpotFrom = 0.75;

const directOf = ({lines}: HeardPlaying) =>
	lines.filter(({isSub, onset, direct}) => !isSub && onset && direct.sweep.law.toHertz > 4000);

/** @returns `undefined` where the two have no line in common. */
export function shiftBetween(first: HeardPlaying, second: HeardPlaying): SpotShift | undefined {
	const pairs = directOf(first).flatMap(line => {
		const other = directOf(second).find(({channel}) => channel === line.channel);
		return other ? [[line, other] as const] : [];
	});
	if (pairs.length === 0) return undefined;
	const reference = (playing: HeardPlaying) =>
		directOf(playing)[0]!.onset!.ms - directOf(playing)[0]!.delayMs!;
	const [zero, otherZero] = [reference(first), reference(second)];
	const lags = pairs.map(([line, other]) => lagOf(line, other, otherZero - zero));
	const middle = median(lags.map(({ms}) => ms));
	const worstMs = Math.max(...lags.map(({ms}) => Math.abs(ms - middle)));
	return {
		likeness: lags.reduce((sum, {likeness}) => sum + likeness, 0) / lags.length,
		ms: middle,
		db: median(lags.map(({db}) => db)),
		movedMetres: (speed * worstMs) / 1000,
	};
}

/** Both impulse responses count from their own sweeps' schedule; the second's is moved by what the first channels differ. */
function lagOf(line: HeardLine, other: HeardLine, betweenMs: number) {
	const moved = {...other.direct, zero: other.direct.zero + (betweenMs * other.direct.rateHz) / 1000};
	return lagBetween(line.direct, moved, line.onset!.ms);
}

/** Playings in groups, one a spot of the microphone, in the order in which they were recorded. */
export function spotsOf(playings: readonly HeardPlaying[]): HeardPlaying[][] {
	const spots: HeardPlaying[][] = [];
	for (const playing of playings) {
		// Nobody goes back to a spot to the millimetre: only the last one can go on.
		const spot = spots.at(-1);
		const shift = spot && shiftBetween(spot[0]!, playing);
		if (shift && shift.likeness > sameSpotFrom) spot.push(playing);
		else spots.push([playing]);
	}

	return spots;
}
