import {mainChannels} from '../../profile/ask/lines.ts';
import {type Observations, observe} from '../../profile/ask/readings.ts';
import {withRecorded} from '../../profile/ask/recordedReadings.ts';
import {referenceSeat} from '../../profile/ask/seats.ts';
import {subsByFeed, subsOf} from '../../profile/ask/subs.ts';
import {usualTargetDb} from '../../profile/practice.ts';
import type {Channel, ChannelId, Profile, Seat, Sub} from '../../profile/types.ts';
import {type SpeedOfSound, speedOfSound} from '../../science/acoustics/air.ts';
import {type Holding, holdingOf} from '../survey/holding.ts';
import type {CrossoverSuggestion} from './crossover/result.ts';
import type {Parts} from './parts.ts';
import type {AdjustedDistances} from './timing/distances.ts';
import {networkDistances} from './timing/networkDistances.ts';

/** A profile read once: all that its settings are computed from, laid out. */
export type Bench = {
	readonly profile: Profile;
	readonly seat: Seat;
	/** Channels with a speaker of their own. */
	readonly mains: readonly Channel[];
	readonly subs: readonly Sub[];
	/** Subs by LFE channel and processor output. */
	readonly feeds: ReadonlyMap<ChannelId, ReadonlyMap<string, readonly string[]>>;
	readonly observations: Observations;
	/** How well the tape was read and held. */
	readonly holding: Holding;
	readonly air: SpeedOfSound;
	/** Distances that all tape readings give together. */
	readonly adjusted: AdjustedDistances;
	readonly crossovers: CrossoverSuggestion;
	/** Of channels with a speaker, and of all subs together, dB. */
	readonly targetDb: number;
	readonly subTargetDb: number;
};

/**
Reads a profile once.

@param parts - The costly parts; nothing below looks for them again.
*/
export function benchOf(profile: Profile, {survey, crossovers}: Parts): Bench {
	const targetDb = profile.target?.levelDb ?? usualTargetDb;
	const seat = referenceSeat(profile);
	return {
		profile,
		seat,
		mains: mainChannels(profile),
		subs: subsOf(profile),
		feeds: subsByFeed(profile),
		observations: withRecorded(profile, observe(profile)),
		holding: holdingOf(profile),
		air: speedOfSound(profile.air),
		adjusted: networkDistances(survey, seat.id),
		crossovers,
		targetDb,
		subTargetDb: targetDb + (profile.target?.subOffsetDb ?? 0),
	};
}
