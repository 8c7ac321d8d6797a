import {type BandPower, energyBefore} from '../../science/signal/bandPower.ts';
import {type DecayLine, decayLine} from './decayLine.ts';

/** A decay by backward integration. */
export type DecayCurve = {
	/** From the strongest to the noise, dB. */
	readonly rangeDb: number;
	/**
	Time for 60 dB from the slope between two levels below the start, dB; `undefined` where it does not fall, or where the lower one
	is less than 10 dB above the noise.
	*/
	readonly secondsBetween: (topDb: number, bottomDb: number) => number | undefined;
};

/** Steps of the curve, seconds. */
const stepSeconds = 0.001;

/**
Backward integration of a power, with the noise taken off, up to where the decay meets the noise; what lies beyond is made up
by the exponential that leads there.

@param power - Of one band; from the arrival on its last fifth holds noise only.
@param fromSeconds - The arrival.
@param middleHertz - Of the band: below 200 Hz powers are smoothed over longer times.
@see ISO 3382-1:2009, 5.3.3, NOTE on the correction C; ISO 3382-2:2008, 5.3: evaluated down to 10 dB above the noise.
*/
export function decayCurve(power: BandPower, fromSeconds = 0, middleHertz = 1000): DecayCurve {
	const energyAt = energyBefore(power);
	const steps = Math.max(
		0,
		Math.floor((power.powers.length / power.rateHz - fromSeconds) / stepSeconds + 1e-9),
	);
	const powers = new Float64Array(steps);
	let before = energyAt(fromSeconds);
	for (let index = 0; index < steps; index += 1) {
		const after = energyAt(fromSeconds + (index + 1) * stepSeconds);
		powers[index] = (after - before) / (stepSeconds * power.rateHz);
		before = after;
	}

	const line = decayLine(powers, Math.round((middleHertz < 200 ? 0.04 : 0.02) / stepSeconds));
	if (!line) return {rangeDb: 0, secondsBetween: () => undefined};
	const levels = levelsOf(powers, line);
	return {
		rangeDb: line.rangeDb,
		secondsBetween(topDb, bottomDb) {
			let [count, x, y, xx, xy] = [0, 0, 0, 0, 0];
			for (let index = 0; index < levels.length; index += 1) {
				const level = levels[index]!;
				if (level > topDb) continue;
				if (level < bottomDb) {
					const slope = (count * xy - x * y) / (count * xx - x * x);
					return index <= line.clearUntil && count > 2 && slope < 0 ? (-60 / slope) * stepSeconds : undefined;
				}

				count += 1;
				x += index;
				y += level;
				xx += index * index;
				xy += index * level;
			}

			return undefined;
		},
	};
}

/** Level of what is left of the energy at each step, dB re all of it, up to where the decay meets the noise. */
function levelsOf(powers: Float64Array, {noise, meets, lost}: DecayLine): Float64Array {
	const left = new Float64Array(meets + 1);
	left[meets] = lost;
	for (let index = meets - 1; index >= 0; index -= 1) left[index] = left[index + 1]! + powers[index]! - noise;
	const all = Math.max(left[0]!, 1e-300);
	return left.map(value => 10 * Math.log10(Math.max(value, 1e-300) / all));
}
