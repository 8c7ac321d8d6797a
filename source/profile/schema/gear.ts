import * as z from 'zod';
import {type ChannelId, channelIds} from '../channels.ts';
import {decibels, finite, hertz, id, label, milliseconds, nonNegative, positive} from './primitives.ts';

export const channelId = z.enum(channelIds as [ChannelId, ...ChannelId[]]);

const lowLimitDropDb = z.union([z.literal(3), z.literal(6), z.literal(10)]);

/** What a data sheet says of a speaker and its amplifier; every field may be missing. */
export const speakerData = z.looseObject({
	sensitivityDb: decibels.optional(),
	/** Sensitivities are stated at 1 m for one watt, or for 2.83 V whatever the impedance. */
	sensitivityFor: z.enum(['1 W', '2.83 V']).optional(),
	impedanceOhms: positive.max(1000).optional(),
	amplifierWatts: positive.max(100_000).optional(),
	/** Low-frequency limit and how far down the response is there (3, 6 or 10 dB; 3 where not given). */
	lowLimitHertz: hertz.optional(),
	lowLimitDropDb: lowLimitDropDb.optional(),
	box: z.enum(['closed', 'vented']).optional(),
	/** Total Q of a closed box; Butterworth (0.7071) where not given. */
	totalQ: positive.max(10).optional(),
});

export const channel = z.looseObject({
	id: channelId,
	speaker: speakerData.optional(),
	/** A wireless link or converter in this channel's line, stated once here. */
	latencyMs: nonNegative.max(1000).optional(),
	latencyFrom: label.optional(),
	/** The speaker cannot be moved (built in, rented wall, …). */
	fixed: z.boolean().optional(),
});

/** A subwoofer. It is fed by an LFE output of the receiver, directly or through an output of the bass processor. */
export const sub = z.looseObject({
	id,
	name: label,
	fedBy: z.enum(['LFE1', 'LFE2']),
	processorOutput: id.optional(),
	/** Latency of the sub's own electronics or wireless link. */
	latencyMs: nonNegative.max(1000).optional(),
	lowLimitHertz: hertz.optional(),
	lowLimitDropDb: lowLimitDropDb.optional(),
	upperLimitHertz: hertz.optional(),
	box: z.enum(['closed', 'vented']).optional(),
	totalQ: positive.max(10).optional(),
	/** Largest level at 1 m that the maker states, half space, dB. */
	maximumLevelDb: decibels.optional(),
	fixed: z.boolean().optional(),
});

/** How the receiver takes timing: as the distance of the speaker, or as a delay. */
const distanceEntry = z.looseObject({
	kind: z.literal('distance'),
	/** The unit shown on the receiver's screen. */
	shownIn: z.enum(['m', 'cm', 'ft', 'in']),
	stepMetres: positive.max(10),
	minimumMetres: nonNegative.max(1000),
	maximumMetres: positive.max(1000),
	/** The receiver's own constant; 343 m/s where not given. */
	speedOfSoundMetresPerSecond: finite.min(250).max(450).optional(),
});
const delayEntry = z.looseObject({
	kind: z.literal('delay'),
	stepMs: positive.max(100),
	minimumMs: milliseconds,
	maximumMs: milliseconds,
});

/** Steps of a level control, dB. */
export const levelSteps = z.looseObject({stepDb: positive.max(20), minimumDb: decibels, maximumDb: decibels});

const filterShape = z.looseObject({
	kind: z.enum(['butterworth', 'linkwitz-riley']),
	order: z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4), z.literal(6), z.literal(8)]),
});

/** The receiver, described only by what it can take. */
export const receiver = z.looseObject({
	name: label.optional(),
	timing: z.discriminatedUnion('kind', [distanceEntry, delayEntry]),
	trim: levelSteps,
	crossover: z.looseObject({
		choicesHertz: z.array(hertz).min(1).max(100),
		/** One frequency for all channels, or a choice for each. */
		scope: z.enum(['per channel', 'common']),
		fullRange: z.boolean().optional(),
		highPass: filterShape.optional(),
		lowPass: filterShape.optional(),
		lfeLowPassChoicesHertz: z.array(hertz).max(100).optional(),
	}),
	subOutputs: z.number().int().min(0).max(8),
	/** Whether it can invert the polarity of a sub output. */
	invertsSubs: z.boolean().optional(),
});

/** An outboard processor between the receiver's sub outputs and the subs. */
export const bassProcessor = z.looseObject({
	name: label.optional(),
	latencyMs: nonNegative.max(1000),
	outputs: z.array(id).min(1).max(32),
	delay: z.looseObject({stepMs: positive.max(100), minimumMs: milliseconds, maximumMs: milliseconds}),
	gain: levelSteps,
	invertsOutputs: z.boolean().optional(),
});

/** The tape and the meter, where they differ from the usual. */
export const kit = z.looseObject({
	/** Smallest division that the tape is read to, metres. */
	tapeStepMetres: positive.max(1).optional(),
	/** Added to each reading of the meter, from its calibration. */
	meterOffsetDb: finite.min(-20).max(20).optional(),
	/** How far two readings of the same thing differ, one standard deviation; 0.5 dB where not given. */
	meterSigmaDb: positive.max(10).optional(),
	meterWeighting: z.enum(['A', 'C', 'Z']).optional(),
});
