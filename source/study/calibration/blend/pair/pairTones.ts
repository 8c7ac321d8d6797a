import type {ReadUnder} from '../noise.ts';
import type {SubsState} from '../subsState.ts';
import type {SumReading} from '../toneSum.ts';

/** Tones at which two lines of subs are told apart, hertz: the bass of the LFE channel, a third of an octave apart. */
export const pairToneHertz = [32, 40, 50, 63] as const;

/** What the level of one line against the other's may differ and still count, dB: it moves the sum by half. */
const mostApartDb = 0.5;

/**
Levels of two lines of subs together by tone: `laterMs` is how much later the second stands than the first, `inverted`
whether it is turned against it. Readings under any settings count, as long as both were as loud to each other.

@param standing - Whose levels between the lines count.
*/
export function pairTones(
	read: readonly ReadUnder[],
	subs: readonly string[],
	standing: SubsState,
): ReadonlyMap<number, readonly SumReading[]> {
	const tones = new Map<number, SumReading[]>();
	if (standing.relation.length !== 2) return tones;
	const apartDb = ({gainsDb}: SubsState) => gainsDb[1]! - gainsDb[0]!;
	for (const {reading, set, played, louderDb} of read) {
		const {signal, sounding, sigmaDb, index} = reading;
		if (signal.kind !== 'tone' || sounding.mains.length > 0 || sounding.subs.length < subs.length) continue;
		if (Math.abs(apartDb(set) - apartDb(standing)) > mostApartDb) continue;
		const {apartMs, isTurned} = played.relation[1]!;
		const levelDb = reading.levelDb - louderDb - (set.gainsDb[0]! + set.gainsDb[1]!) / 2;
		const sum = {laterMs: apartMs, inverted: isTurned, levelDb, sigmaDb, index};
		tones.set(signal.hertz, [...(tones.get(signal.hertz) ?? []), sum]);
	}

	return tones;
}
