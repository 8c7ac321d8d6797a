import {standingSettings} from '../../profile/ask/settings.ts';
import {subsOf} from '../../profile/ask/subs.ts';
import {isLfe} from '../../profile/channels.ts';
import type {ChannelId, Profile} from '../../profile/types.ts';
import {type TestSpectrum, weightingOfSpectrum} from '../../science/acoustics/band.ts';
import {type ChannelOrder, channelOrder} from '../../science/signal/channelMask.ts';
import {wholePeriodsHertz} from '../../science/signal/tone.ts';
import {suggestedHertz} from '../calibration/blend/blendInputs.ts';
import {centreOf, commonHertz, frontsOf, isBlended} from '../calibration/blend/inputs.ts';
import {noiseOf} from '../calibration/blend/planned.ts';
import {blendTones} from '../calibration/blend/tonesOf.ts';

export const sampleRateHz = 48_000;
/** One loop of noise, samples: 5.46 s. The meter's mean over one whole loop is the exact level. */
export const noiseLength = 2 ** 18;
/** One loop of a tone, samples: 5 s, in which every multiple of 0.2 Hz has whole periods. */
export const toneLength = 5 * sampleRateHz;
const highestToneHertz = 1000;
/** The LFE channel is recorded 10 dB low and restored on playback, dB. @see ITU-R BS.775-3, Annex 7. */
export const lfeOffsetDb = -10;

export const mainsBand = {kind: 'pink', fromHertz: 500, toHertz: 2000} as const;
export const subBand = {kind: 'pink', fromHertz: 30, toHertz: 80} as const;

/** One file to write. */
export type SignalFile = {
	readonly file: string;
	readonly what: 'noise' | 'tone' | 'count';
	/** Absent for the counting file, which goes through all channels. */
	readonly spectrum?: TestSpectrum;
	/** The channel that sounds in a file of the layout; absent in mono files. */
	readonly channel?: string;
	/** Several that sound at once, each with a noise of its own. */
	readonly together?: readonly string[];
	/** RMS, dBFS with a full-scale sine as 0 dBFS; of the noise within the bursts in the counting file. */
	readonly levelDbfs: number;
	/** What the file is for, one sentence. */
	readonly use: string;
	/** What a meter with each weighting reads above the unweighted level, dB. */
	readonly reads?: {readonly A: number; readonly C: number};
};

export type SignalPlan = {
	readonly files: readonly SignalFile[];
	/** Channel order and mask of the files in the layout's order; absent without a profile. */
	readonly order?: ChannelOrder;
	readonly cautions: readonly string[];
};

const cautions = [
	'Turn the master volume down before the first file, then up slowly to about 75 dB at the seat.',
	'Low tones and sub noise move cones far while sounding soft. Stop when a speaker buzzes or clacks; no tone longer than half a minute.',
	'Wear ear protection above 85 dB, and let nobody sit close to a speaker that is playing.',
] as const;

function reads(spectrum: TestSpectrum): {readonly A: number; readonly C: number} {
	return {A: weightingOfSpectrum('A', spectrum), C: weightingOfSpectrum('C', spectrum)};
}

/** Front speakers into which tones are wanted, and the tones about their crossovers. */
function toneGroups(
	profile: Profile | undefined,
): ReadonlyArray<{playInto: string; crossoverHertz: number; hertz: readonly number[]}> {
	const usual = [{playInto: 'FC', crossoverHertz: 80, hertz: blendTones(80)}];
	if (!profile || subsOf(profile).length === 0) return usual;
	const decided = standingSettings(profile);
	const suggested = suggestedHertz(profile);
	// No room crosses over up there, but a profile may say so, and a file cannot hold it.
	const canPlay = (hertz: number) => hertz < highestToneHertz;
	const groups = frontsOf(profile).flatMap(id => {
		const crossover = decided?.channels[id as ChannelId]?.crossoverHertz ?? suggested.get(id);
		return typeof crossover === 'number'
			? [{playInto: id, crossoverHertz: crossover, hertz: blendTones(crossover).filter(canPlay)}]
			: [];
	});
	return groups.length > 0 ? groups : usual;
}

/** Noise about the crossover that verifies a blend: into the centre alone, and into all fronts at once. */
function blendNoise(
	profile: Profile,
	groups: ReturnType<typeof toneGroups>,
	order: ChannelOrder,
	noise: (file: string, spectrum: TestSpectrum, use: string, channel?: string) => SignalFile,
): SignalFile[] {
	const fronts = groups.map(({playInto}) => playInto).filter(id => order.channels.includes(id));
	const centre = centreOf(fronts);
	if (subsOf(profile).length === 0 || centre === undefined) return [];
	if (!groups.every(({crossoverHertz}) => isBlended(crossoverHertz))) return [];
	const spectrum = noiseOf({crossoverHertz: commonHertz(groups.map(({crossoverHertz}) => crossoverHertz))});
	const use = 'Blend: the same before and after, to verify a setting of the subs';
	const one = noise(`layout-blend-noise-${centre}.wav`, spectrum, `${use}, ${centre} alone.`, centre);
	if (fronts.length === 1) return [one];
	const all = noise('layout-blend-noise-fronts.wav', spectrum, `${use}, ${fronts.join(', ')} at once.`);
	return [one, {...all, together: fronts}];
}

const toneHertz = (hertz: number) => wholePeriodsHertz({hertz, sampleRateHz, length: toneLength});
const twoDigits = (index: number) => String(index + 1).padStart(2, '0');

/**
The test signals that a room needs: noise and tones in mono, and with a profile each channel's noise, the tones of the
blend and a counting file in the layout's channel order.

@param profile - Read: channels, subs, receiver, settings. Without one, mono files about 80 Hz.
@param levelDbfs - RMS of all files, dBFS; files for an LFE channel are 10 dB lower, which playback makes up.
*/
export function planSignals(profile: Profile | undefined, levelDbfs: number): SignalPlan {
	const groups = toneGroups(profile);
	const tones = [...new Set(groups.flatMap(({hertz}) => hertz))].sort((a, b) => a - b);
	const noise = (file: string, spectrum: TestSpectrum, use: string, channel?: string): SignalFile => ({
		file,
		what: 'noise',
		spectrum,
		levelDbfs: levelDbfs + (channel !== undefined && isLfe(channel) ? lfeOffsetDb : 0),
		use,
		reads: reads(spectrum),
		...(channel !== undefined && {channel}),
	});
	const toneFile = (file: string, hertz: number, use: string, channel?: string): SignalFile => {
		const spectrum = {kind: 'tone', hertz: toneHertz(hertz)} as const;
		return {...noise(file, spectrum, use, channel), what: 'tone'};
	};
	const mono = [
		noise('mains-noise.wav', mainsBand, 'Level of each speaker: play it into one channel at a time.'),
		noise(
			'sub-noise.wav',
			subBand,
			'Level of each sub, singly and together; an LFE input plays it 10 dB louder.',
		),
		...tones.map(hertz => toneFile(`tone-${hertz}-hz.wav`, hertz, 'Blend: the front speaker with all subs.')),
	];
	if (!profile) return {files: mono, cautions};
	const order = channelOrder(profile.channels.map(({id}) => id));
	return {
		files: [
			...mono,
			{
				file: 'layout-count.wav',
				what: 'count',
				levelDbfs,
				use: `Which speaker is which: each channel in turn, as many bursts as its place (${order.channels.map((id, index) => `${index + 1} ${id}`).join(', ')}).`,
			},
			...order.channels.map((id, index) =>
				noise(
					`layout-noise-${twoDigits(index)}-${id}.wav`,
					isLfe(id) ? subBand : mainsBand,
					isLfe(id)
						? `Level of the subs on ${id}; written 10 dB lower, as playback adds 10 dB.`
						: `Level of ${id} alone.`,
					id,
				),
			),
			...groups
				.filter(({playInto}) => order.channels.includes(playInto))
				.flatMap(({playInto, hertz}) => hertz.map(f => [f, playInto] as const))
				.map(([f, id]) =>
					toneFile(
						`layout-tone-${f}-hz-${id}.wav`,
						f,
						`Blend: the tone into ${id}, through bass management.`,
						id,
					),
				),
			...blendNoise(profile, groups, order, noise),
		],
		order,
		cautions,
	};
}
