import type {Remark} from '../result.ts';
import type {CollectedPair} from './collect.ts';
import {type BlendFit, fitBlend} from './fit.ts';
import {type CosineReading, impossibleRemark, isPhaseSeen, judgeCosine, unseenRemark} from './impossible.ts';
import type {BlendTone} from './tones.ts';

/** What was read and found at one tone. */
export type BlendToneResult = {
	readonly hertz: number;
	/** Each group alone, dB without weighting. */
	readonly stillDb: number;
	readonly movedDb: number;
	/** Whether the levels are near enough for their phase to show. */
	readonly seen: boolean;
	readonly readings: readonly CosineReading[];
};

/** A pair with its fit, and the tones that the fit used. */
export type Fitted = {
	readonly pair: CollectedPair;
	readonly usable: readonly BlendTone[];
	readonly tones: readonly BlendToneResult[];
	readonly fit: BlendFit;
	readonly remarks: readonly Remark[];
};

/** Judges every reading of a pair, leaves out what cannot be or cannot be seen, and fits the rest. */
export function fitPair(pair: CollectedPair): Fitted {
	const remarks: Remark[] = [...pair.remarks];
	const tones: BlendToneResult[] = [];
	const usable: BlendTone[] = [];
	for (const tone of pair.tones) {
		const seen = isPhaseSeen(tone);
		const readings = tone.both.map(reading => judgeCosine(tone, reading));
		tones.push({hertz: tone.hertz, stillDb: tone.stillDb, movedDb: tone.movedDb, seen, readings});
		if (!seen) {
			if (readings.length > 0) remarks.push(unseenRemark(tone, pair.id));
			continue;
		}

		for (const reading of readings) {
			if (reading.verdict !== 'fine') remarks.push(impossibleRemark(tone, reading, pair.id));
		}

		usable.push({...tone, both: tone.both.filter((_, index) => readings[index]!.verdict === 'fine')});
	}

	return {pair, usable, tones, fit: fitBlend(usable), remarks};
}
