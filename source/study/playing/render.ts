import {isLfe} from '../../profile/channels.ts';
import {bandNoise} from '../../science/signal/bandNoise.ts';
import {countedBursts, countedSeconds} from '../../science/signal/counted.ts';
import {setLevel} from '../../science/signal/level.ts';
import {tone} from '../../science/signal/tone.ts';
import type {WaveContent} from '../../science/signal/waveFile.ts';
import {
	lfeOffsetDb,
	mainsBand,
	noiseLength,
	type SignalFile,
	type SignalPlan,
	sampleRateHz,
	subBand,
	toneLength,
} from './plan.ts';

/** Crest that noise is held to, dB: an amplifier and a small speaker bear the peaks, and it still sounds like noise. */
const aimedCrestDb = 11;

/** Each tone of a row has its blips, then sounds until its time is over. */
const rowSlotSeconds = 12;
/** Tones of a row swell and fade, so that none clicks. */
const rowEdgeSeconds = 0.05;

/** Tones one after the other, 12 s each: as many blips as its number, then the tone, which a slow meter settles on. */
function toneRow(hertz: readonly number[], levelDbfs: number): Float64Array {
	const slot = rowSlotSeconds * sampleRateHz;
	const edge = rowEdgeSeconds * sampleRateHz;
	const samples = new Float64Array(hertz.length * slot);
	for (const [index, frequency] of hertz.entries()) {
		const sound = tone({hertz: frequency, sampleRateHz, length: toneLength, levelDbfs});
		const blips = countedBursts({noise: sound, sampleRateHz, count: index + 1});
		samples.set(blips, index * slot);
		for (let at = blips.length; at < slot; at++) {
			const fromEnd = Math.min(at - blips.length, slot - 1 - at);
			const swell = Math.min(1, fromEnd / edge);
			samples[index * slot + at] = swell * sound[at % toneLength]!;
		}
	}

	return samples;
}

/**
Samples for the files of a plan. Noise of one band is made once and shared by all files at its level.

@param random - Numbers between 0 and 1; the same numbers give the same files.
@returns A function from a file of the plan to what `waveFile` writes.
*/
export function signalRenderer(plan: SignalPlan, random: () => number): (file: SignalFile) => WaveContent {
	const made = new Map<string, Float64Array>();
	const noiseOf = (fromHertz: number, toHertz: number, levelDbfs: number, apart = ''): Float64Array => {
		const band = `${fromHertz} ${toHertz} ${apart}`;
		const key = `${band} ${levelDbfs}`;
		let samples = made.get(key);
		if (!samples) {
			let unit = made.get(band);
			if (!unit) {
				unit = bandNoise({
					fromHertz,
					toHertz,
					sampleRateHz,
					length: noiseLength,
					levelDbfs: 0,
					crestDb: aimedCrestDb,
					random,
				});
				made.set(band, unit);
			}

			samples = setLevel(unit.slice(), levelDbfs);
			made.set(key, samples);
		}

		return samples;
	};

	const places = (channel: string | undefined, samples: Float64Array, order = plan.order): WaveContent => {
		if (channel === undefined || !order) return {channels: [samples], sampleRateHz, mask: 0};
		const channels = order.channels.map(id => (id === channel ? samples : undefined));
		return {channels, sampleRateHz, mask: order.mask};
	};

	const count = (levelDbfs: number): WaveContent => {
		const order = plan.order!;
		const seconds = order.channels.map((_, index) => countedSeconds(index + 1));
		const length = seconds.reduce((sum, each) => sum + Math.round(each * sampleRateHz), 0);
		let from = 0;
		const channels = order.channels.map((id, index) => {
			const {fromHertz, toHertz} = isLfe(id) ? subBand : mainsBand;
			const noise = noiseOf(fromHertz, toHertz, levelDbfs + (isLfe(id) ? lfeOffsetDb : 0));
			const bursts = countedBursts({noise, sampleRateHz, count: index + 1});
			const samples = new Float64Array(length);
			samples.set(bursts, from);
			from += bursts.length;
			return samples;
		});
		return {channels, sampleRateHz, mask: order.mask};
	};

	return ({what, spectrum, channel, together, levelDbfs, order, row}) => {
		if (row) return places(channel, toneRow(row, levelDbfs), order);
		if (what === 'count' || !spectrum) return count(levelDbfs);
		if (together && plan.order && spectrum.kind === 'pink') {
			// Each a noise of its own: one noise in all of them would add up by their places in the room.
			const channels = plan.order.channels.map(id =>
				together.includes(id) ? noiseOf(spectrum.fromHertz, spectrum.toHertz, levelDbfs, id) : undefined,
			);
			return {channels, sampleRateHz, mask: plan.order.mask};
		}

		return places(
			channel,
			spectrum.kind === 'tone'
				? tone({hertz: spectrum.hertz, sampleRateHz, length: toneLength, levelDbfs})
				: noiseOf(spectrum.fromHertz, spectrum.toHertz, levelDbfs),
			order,
		);
	};
}
