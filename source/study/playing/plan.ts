import {standingSettings} from '../../profile/ask/settings.ts';
import {subsByFeed, subsOf} from '../../profile/ask/subs.ts';
import {isLfe, isOverhead} from '../../profile/channels.ts';
import {lfeGainDb, usualMainsBand, usualSubBand} from '../../profile/practice.ts';
import type {ChannelId, Profile} from '../../profile/types.ts';
import {type TestSpectrum, weightingOfSpectrum} from '../../science/acoustics/band.ts';
import {type ChannelOrder, channelOrder} from '../../science/signal/channelMask.ts';
import {wholePeriodsHertz} from '../../science/signal/tone.ts';
import {suggestedHertz} from '../calibration/blend/blendInputs.ts';
import {centreOf, commonHertz, frontsOf, isBlended} from '../calibration/blend/inputs.ts';
import {pairToneHertz} from '../calibration/blend/pair/pairTones.ts';
import {noiseOf} from '../calibration/blend/planned.ts';
import {blendTones} from '../calibration/blend/tonesOf.ts';
import {suggestCrossovers} from '../calibration/crossover/suggest.ts';

export const sampleRateHz = 48_000;
/** One loop of noise, samples: 5.46 s. The meter's mean over one whole loop is the exact level. */
export const noiseLength = 2 ** 18;
/** One loop of a tone, samples: 5 s, in which every multiple of 0.2 Hz has whole periods. */
export const toneLength = 5 * sampleRateHz;
const highestToneHertz = 1000;
/** Files for the LFE channel are lower by what playback adds, dB. */
export const lfeOffsetDb = -lfeGainDb;

export const mainsBand = usualMainsBand;
export const subBand = usualSubBand;

/** One file to write. */
export type SignalFile = {
	readonly file: string;
	readonly what: 'noise' | 'tone' | 'count' | 'row';
	/** Absent for the counting file, which goes through all channels. */
	readonly spectrum?: TestSpectrum;
	/** The channel that sounds in a file of several channels; absent in mono files. */
	readonly channel?: string;
	/** Order of the channels in this file, where it is not that of the layout. */
	readonly order?: ChannelOrder;
	/** Tones one after the other, hertz: each with as many blips before it as its number. */
	readonly row?: readonly number[];
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
	/** Channel order and mask of the files in the layout's order, eight channels at most; absent without a profile. */
	readonly order?: ChannelOrder;
	readonly cautions: readonly string[];
};

/** What every player plays: left and right. */
const twoChannels: ChannelOrder = {channels: ['FL', 'FR'], mask: 0x3, unplaced: []};
/** Players and links take no more in one file. Common practice, no source. */
const mostChannels = 8;

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
	const suggested = suggestedHertz(suggestCrossovers(profile));
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
	const one = noise(blendFile([centre], 'pink'), spectrum, `${use}, ${centre} alone.`, centre);
	if (fronts.length === 1) return [one];
	const all = noise(blendFile(fronts, 'pink'), spectrum, `${use}, ${fronts.join(', ')} at once.`);
	return [one, {...all, together: fronts}];
}

/**
The LFE channel whose tones set two lines of subs against each other. A file has one LFE channel, which a receiver with two
outputs for subs plays into both.
*/
function feedOfPair(profile: Profile): ChannelId | undefined {
	const feeds = [...subsByFeed(profile)];
	const lines = feeds.reduce((count, [, byOutput]) => count + byOutput.size, 0);
	return lines === 2 ? feeds[0]![0] : undefined;
}

/** Front speakers that a file of two channels holds, and what its name calls them. */
const sides = [
	['FL', 'left'],
	['FR', 'right'],
] as const;

/** Name of the file that is played for a reading of the blend: a row of tones into one front speaker, or noise into one or all. */
export function blendFile(playInto: readonly string[], kind: 'tone' | 'pink'): string {
	if (kind === 'pink') return `layout-blend-noise-${playInto.length === 1 ? playInto[0] : 'fronts'}.wav`;
	const side = sides.find(([id]) => id === playInto[0])?.[1];
	return side ? `${side}-tones.wav` : `layout-tones-${playInto[0]}.wav`;
}

const toneHertz = (hertz: number) => wholePeriodsHertz({hertz, sampleRateHz, length: toneLength});
const twoDigits = (index: number) => String(index + 1).padStart(2, '0');

/**
The test signals that a room needs: left and right alone for any player, noise and tones in mono, and with a profile the
tones of the blend in rows, each channel's noise and a counting file in the layout's channel order, up to eight channels.

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
	const toneFile = (file: string, hertz: number, use: string): SignalFile => {
		const spectrum = {kind: 'tone', hertz: toneHertz(hertz)} as const;
		return {...noise(file, spectrum, use), what: 'tone'};
	};
	const mono = [
		noise('speaker-noise.wav', mainsBand, 'Level of each speaker: play it into one channel at a time.'),
		noise(
			'sub-noise.wav',
			subBand,
			'Level of each sub, singly and together; an LFE input plays it 10 dB louder.',
		),
		...tones.map(hertz => toneFile(`tone-${hertz}-hz.wav`, hertz, 'Blend: the front speaker with all subs.')),
	];
	const has = (id: string) => !profile || profile.channels.some(channel => channel.id === id);
	const sideNoise = sides
		.filter(([id]) => has(id))
		.map(([id, side]) => ({
			...noise(`${side}-noise.wav`, mainsBand, `Level of the front ${side}: two channels, any player.`, id),
			order: twoChannels,
		}));
	const rowOf = (
		file: string,
		hertz: readonly number[],
		channel: string,
		own?: ChannelOrder,
	): SignalFile => ({
		file,
		what: 'row',
		row: hertz.map(toneHertz),
		levelDbfs: levelDbfs + (isLfe(channel) ? lfeOffsetDb : 0),
		use: `Blend, once for each state: ${hertz.join(', ')} Hz into ${channel}, 12 s each, as many blips before a tone as its number.`,
		channel,
		...(own && {order: own}),
	});
	if (!profile) return {files: [...sideNoise, ...mono], cautions};
	// Those at ear height first: what does not fit is read with the receiver's own noise.
	const ids = profile.channels.map(({id}) => id);
	const fitting = [...ids.filter(id => !isOverhead(id)), ...ids.filter(id => isOverhead(id))].slice(
		0,
		mostChannels,
	);
	const order = channelOrder(fitting);
	const rows = groups
		.filter(({playInto, hertz}) => has(playInto) && hertz.length > 0)
		.map(({playInto, hertz}) => {
			const isSide = sides.some(([id]) => id === playInto);
			return rowOf(blendFile([playInto], 'tone'), hertz, playInto, isSide ? twoChannels : undefined);
		});
	const pairFeed = feedOfPair(profile);
	if (pairFeed && order.channels.includes(pairFeed))
		rows.push(rowOf(blendFile([pairFeed], 'tone'), pairToneHertz, pairFeed));
	return {
		files: [
			...sideNoise,
			...rows,
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
			...blendNoise(profile, groups, order, noise),
		],
		order,
		cautions,
	};
}
