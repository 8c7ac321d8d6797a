import {leastGainsDb} from '../../profile/practice.ts';
import type {Profile} from '../../profile/types.ts';
import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import type {BlendResult} from '../../study/calibration/blend/blendResult.ts';
import type {RecordedState} from '../../study/hearing/recordedState.ts';
import {recordedSentence} from './recorded.ts';

const kept = `Kept where neither got softer and the gains together reach ${formatNumber(leastGainsDb, 1)} dB; else it goes back.`;

/** How what the meter's way advises came about, in a few sentences. */
export function blendReasons(result: BlendResult): string[] {
	const {way, wanted, trial, tones, fronts, search} = result;
	const gain = wanted?.gainDb;
	const expected = gain
		? ` ${formatSigned(gain.value, 1)} dB expected (± ${formatNumber(gain.sigma, 1)}).`
		: '';
	const read = search.filter(({levelDb}) => levelDb !== undefined).length;
	const found =
		way === 'search'
			? `${read} settings of all subs together were read with noise; the loudest is the one to try.${expected}`
			: `${tones.filter(({readings}) => readings.length > 0).length} tones of ${fronts.length === 1 ? 'one front' : `${fronts.length} fronts`} were read at three delays of all subs: that tells each at every other delay and polarity. The loudest mean is the one to try.${expected}`;
	return [found, trial ? kept : 'Noise before and after decides.'];
}

/** How what a recording advises came about, in a few sentences. */
export function recordedReasons(profile: Profile, state: RecordedState): string[] {
	return [
		'recording' in state && state.recording.apartBy === 'lfe'
			? 'The LFE sweep holds the subs alone; the stated low-passes of the crossover and of the LFE channel turn it into what each speaker’s sweep got of them. Below the crossover the two agree.'
			: 'The playings differ in one thing, so speakers and subs come apart without any model of filters.',
		'Their sums over all recorded fronts were tried at every delay and polarity that the boxes take; the loudest through the crossover is it.',
		recordedSentence(profile, state),
	];
}
