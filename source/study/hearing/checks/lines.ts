import {finding} from '../../../profile/finding.ts';
import {median} from '../../../science/numeric/statistics.ts';
import {withinBand} from '../../../science/signal/envelope.ts';
import type {HearingFinding} from '../facts.ts';
import type {HeardLine, HeardPlaying} from '../heardPlaying.ts';
import type {Impulse} from '../impulses.ts';
import {meanPower} from '../noise.ts';

/** A slam or speech lifts the noise before the first sound of one sweep by this above the others', dB. */
const disturbedFromDb = 12;
/** Below this range an octave tells nothing of its decay, dB. */
const leastRangeDb = 25;
/** Below this a line stands no longer out of the noise, dB. */
const silentBelowDb = 18;
const band = [150, 300, 5000, 12_000] as const;

/** What is wrong with single lines. */
export function lineFindings({lines, impulses}: HeardPlaying): HearingFinding[] {
	const mains = lines.filter(({isSub}) => !isSub);
	const findings: HearingFinding[] = [];
	for (const line of mains) {
		if (!line.onset || line.noiseBelowDb < silentBelowDb) {
			findings.push(finding('problem', 'heard-silent', [line.channel]));
			continue;
		}

		if (line.onset.later)
			findings.push(
				finding('note', 'heard-later-stronger', [line.channel], {
					laterMs: line.onset.later.ms - line.onset.ms,
					strongerDb: line.onset.later.strongerDb,
				}),
			);
		const octavesHertz = line.decays
			.filter(({rangeDb, hertz}) => rangeDb < leastRangeDb && hertz >= 125)
			.map(({hertz}) => hertz);
		if (octavesHertz.length > 0)
			findings.push(finding('doubt', 'heard-noisy-octaves', [line.channel], {octavesHertz}));
	}

	return [...findings, ...disturbed(mains, impulses)];
}

/** Sweeps whose noise stands out of that of the others of their length. */
function disturbed(mains: readonly HeardLine[], impulses: readonly Impulse[]): HearingFinding[] {
	const onsets = mains.flatMap(({onset}) => onset?.ms ?? []);
	if (onsets.length === 0) return [];
	const reference = Math.min(...onsets);
	const loud = impulses.filter(
		({sweep}) => !sweep.channel.startsWith('LFE') && (sweep.pass === 'main' || sweep.pass === 'again'),
	);
	if (loud.length < 3) return [];
	const noise = loud.map(impulse => 10 * Math.log10(Math.max(noiseBefore(impulse, reference), 1e-30)));
	const usual = median(noise);
	return loud.flatMap(({sweep}, index): HearingFinding[] => {
		const aboveDb = noise[index]! - usual;
		return aboveDb > disturbedFromDb && sweep.pass === 'main'
			? [finding('problem', 'heard-disturbed', [sweep.channel], {aboveDb})]
			: [];
	});
}

/** Noise before the first sound and at the end, where the room has died away. */
function noiseBefore({samples, zero, rateHz}: Impulse, onsetMs: number): number {
	const within = (from: number, to: number) => {
		const filtered = withinBand(samples.subarray(from, Math.max(from + 1, to)), rateHz, band);
		const edge = Math.round(0.004 * rateHz);
		return meanPower(filtered, edge, filtered.length - edge);
	};
	return (
		within(0, Math.round(zero + (onsetMs / 1000 - 0.008) * rateHz)) +
		within(Math.round(0.75 * samples.length), samples.length)
	);
}
