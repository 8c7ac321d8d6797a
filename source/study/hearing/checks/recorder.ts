import {finding} from '../../../profile/finding.ts';
import {median} from '../../../science/numeric/statistics.ts';
import {peakOf} from '../../../science/signal/level.ts';
import {sweepTime} from '../../../science/signal/sweep.ts';
import type {HearingFinding} from '../facts.ts';
import type {HeardPlaying} from '../heardPlaying.ts';
import {meanPower} from '../noise.ts';
import {responseFrequencies} from '../responses.ts';
import {pausePower, powerDbfs, type Recorded, stretchOf} from './recorded.ts';

/** Samples this near to full scale, so many in a row, are flat tops. */
const flatTop = 0.998;
const flatRun = 4;
/** A floor this far down is no room's and no microphone's: something shuts it, dBFS. */
const gatedFloorDbfs = -92;
/** Above 8 kHz a voice mode leaves this little of what lies below, dB. */
const voiceDropDb = 35;
const mostPpm = 300;

/** What the recorder, or the way to it, did to the sound. */
export function recorderFindings(
	heard: HeardPlaying,
	recorded: Recorded,
): {readonly peak: number; readonly findings: HearingFinding[]} {
	const findings: HearingFinding[] = [];
	const {peak, flat} = peaks(recorded, heard.round.seconds);
	if (flat > 0) findings.push(finding('problem', 'heard-clipped', [], {samples: flat}));
	const missing = heard.round.sweeps.filter(
		sweep => !heard.impulses.some(impulse => impulse.sweep === sweep),
	);
	if (missing.length > 0) {
		const endsAt = (recorded.sound.length - recorded.startSample) / recorded.rateHz;
		const lost = missing.filter(({pass}) => pass === 'main').map(({channel}) => channel);
		findings.push(
			finding(lost.length > 0 ? 'problem' : 'doubt', 'heard-cut', [], {
				missingChannels: lost,
				missingSeconds: heard.round.seconds - endsAt,
			}),
		);
	}

	findings.push(...opening(heard, recorded), ...floor(heard, recorded), ...voice(heard));
	if (Math.abs(heard.clockPpm) > mostPpm)
		findings.push(finding('problem', 'heard-clock-far', [], {ppm: heard.clockPpm}));
	return {peak, findings};
}

function peaks(recorded: Recorded, seconds: number): {peak: number; flat: number} {
	let peak = 0;
	let flat = 0;
	let run = 0;
	// Short pieces stay in a processor's cache.
	for (let from = 0; from < seconds; from += 0.5) {
		const part = stretchOf(recorded, from, Math.min(seconds, from + 0.5));
		const largest = peakOf(part);
		peak = Math.max(peak, largest);
		if (largest < flatTop) {
			run = 0;
			continue;
		}

		for (let index = 0; index < part.length; index += 1) {
			if (Math.abs(part[index]!) >= flatTop) {
				run += 1;
				if (run === flatRun) flat += flatRun;
				else if (run > flatRun) flat += 1;
			} else run = 0;
		}
	}

	return {peak, flat};
}

/** Bursts of the opening that are not there: something slept through the start, or swallowed it. */
function opening({round, impulses}: HeardPlaying, recorded: Recorded): HearingFinding[] {
	const main = impulses.find(({sweep}) => sweep.pass === 'main')?.sweep;
	if (!main) return [];
	const sweep = stretchOf(
		recorded,
		main.atSeconds + sweepTime(main.law, 100),
		main.atSeconds + sweepTime(main.law, 300),
	);
	const expected = meanPower(sweep, 0, sweep.length) * 10 ** ((round.burstLevelDbfs - main.levelDbfs) / 10);
	const mains = round.bursts.filter(({channel}) => !channel.startsWith('LFE'));
	const powers = mains.map(({atSeconds, seconds}) => {
		const during = stretchOf(recorded, atSeconds + 0.05, atSeconds + seconds);
		const before = stretchOf(recorded, atSeconds - 0.4, atSeconds - 0.05);
		const noise = meanPower(before, 0, before.length);
		// Noise that would cover a burst hides whether it was there.
		if (8 * noise > expected) return Number.POSITIVE_INFINITY;
		return meanPower(during, 0, during.length) / Math.max(1e-20, noise);
	});
	// Only bursts at the beginning can be swallowed: a silent channel later on is another matter.
	const heardFrom = powers.findIndex(ratio => ratio > 4);
	const missingBursts = heardFrom < 0 ? powers.length : heardFrom;
	return missingBursts > 0 ? [finding('note', 'heard-start-swallowed', [], {missingBursts})] : [];
}

function floor({impulses}: HeardPlaying, recorded: Recorded): HearingFinding[] {
	const floors = impulses.map(({sweep}) => powerDbfs(pausePower(recorded, sweep)));
	const floorDbfs = median(floors.length > 0 ? floors : [0]);
	return floorDbfs < gatedFloorDbfs ? [finding('doubt', 'heard-floor-gated', [], {floorDbfs})] : [];
}

function voice({lines}: HeardPlaying): HearingFinding[] {
	const frequencies = responseFrequencies();
	const levelIn = (power: (index: number) => number, from: number, to: number) => {
		let sum = 0;
		let count = 0;
		for (const [index, hertz] of frequencies.entries()) {
			if (hertz < from || hertz > to) continue;
			sum += power(index);
			count += 1;
		}

		return 10 * Math.log10(Math.max(sum / Math.max(1, count), 1e-30));
	};
	const drops = lines
		.filter(({isSub, upToHertz, onset}) => !isSub && onset && upToHertz > 4000)
		.map(({response}) => {
			const power = (index: number) => response.real[index]! ** 2 + response.imaginary[index]! ** 2;
			return levelIn(power, 1500, 3500) - levelIn(power, 8500, 12_000);
		});
	const droppedDb = Math.min(...drops);
	return drops.length > 0 && droppedDb > voiceDropDb
		? [finding('problem', 'heard-voice-mode', [], {droppedDb})]
		: [];
}
