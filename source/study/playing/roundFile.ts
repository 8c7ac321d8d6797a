import {isLfe} from '../../profile/channels.ts';
import type {Profile} from '../../profile/types.ts';
import {bandNoise} from '../../science/signal/bandNoise.ts';
import {channelOrder} from '../../science/signal/channelMask.ts';
import {seededRandom} from '../../science/signal/seededRandom.ts';
import type {LateWaveContent, WaveContent} from '../../science/signal/waveFile.ts';
import {type PlayedRound, playedRound} from '../hearing/round.ts';
import {placedAs, type RoundSize} from '../hearing/roundCode.ts';
import {roundSamples} from './roundSamples.ts';

/** Channels that a file of six or eight has, whether they sound or not: players know no other sets. */
const sixPlaces = ['FL', 'FR', 'FC', 'LFE1', 'SiL', 'SiR'];
const eightPlaces = ['FL', 'FR', 'FC', 'LFE1', 'BL', 'BR', 'SiL', 'SiR'];
const frontPlaces = ['FL', 'FR', 'FC', 'LFE1'];

/** A round's file: what it plays, and the places of its channels. */
export type RoundFile = {
	readonly file: string;
	readonly size: RoundSize;
	readonly round: PlayedRound;
	/** Every channel of the file in its order; those that the round does not name are silent. */
	readonly places: readonly string[];
	readonly mask: number;
	/** Channels of the profile that no file reaches: overheads and what has no place. */
	readonly leftOut: readonly string[];
};

/**
The file of a round for a profile.

@param size - Two channels, everything that a player of eight channels reaches, or the fronts' bass alone.
@throws {RangeError} If the profile has neither front left nor another main channel with a place in the file.
*/
export function roundFile(profile: Pick<Profile, 'channels'>, size: RoundSize): RoundFile {
	const own = profile.channels.map(({id}) => id as string);
	const has = new Map(own.map(id => [placedAs(id), id]));
	const wanted = size === 'two' ? ['FL', 'FR'] : size === 'bass' ? frontPlaces : eightPlaces;
	const sounding = wanted.filter(place => has.has(place));
	const isEight = sounding.some(place => place === 'BL' || place === 'BR');
	const places = size === 'two' ? ['FL', 'FR'] : isEight ? eightPlaces : sixPlaces;
	const {channels, mask} = channelOrder(places);
	return {
		file: `round-${size === 'two' ? 'two-channels' : size === 'all' ? 'all-channels' : 'bass'}.wav`,
		size,
		round: playedRound(size, sounding),
		places: channels,
		mask,
		leftOut: own.filter(id => !eightPlaces.includes(placedAs(id))),
	};
}

/** What `waveFile` writes, one channel made at a time: all at once would take hundreds of megabytes. */
export function roundContent({round, places, mask}: RoundFile): LateWaveContent {
	return {
		sampleRateHz: round.sampleRateHz,
		mask,
		length: Math.ceil(round.seconds * round.sampleRateHz),
		channels: places.map(place =>
			round.channels.includes(place) ? () => roundSamples(round, place) : undefined,
		),
	};
}

/** A loop of noise in the first channel, to set the loudness by before a round: −30 dBFS, as other files for levels. */
export function loudnessLoop({round, places, mask}: RoundFile): WaveContent {
	const noise = bandNoise({
		fromHertz: 355,
		toHertz: 2818,
		sampleRateHz: round.sampleRateHz,
		length: 2 ** 18,
		levelDbfs: -30,
		crestDb: 11,
		random: seededRandom(1),
	});
	const first = round.channels.find(id => !isLfe(id));
	return {
		sampleRateHz: round.sampleRateHz,
		mask,
		channels: places.map(place => (place === first ? noise : undefined)),
	};
}
