import * as z from 'zod';
import {channelId} from './gear.ts';
import {decibels, hertz, id, isoDateTime, label, metres, milliseconds} from './primitives.ts';

/** A value as computed and as the box takes it. A set typed in by hand has only `stepped`. */
const stepped = (value: z.ZodType<number>) => z.looseObject({exact: value.optional(), stepped: value});

/** What is dialled into the receiver for one channel. Timing is a delay or a distance, as the receiver takes it. */
const channelSetting = z.looseObject({
	delayMs: stepped(milliseconds).optional(),
	distanceMetres: stepped(metres).optional(),
	trimDb: stepped(decibels).optional(),
	/** Crossover frequency, or `full` for full range. Absent for LFE channels. */
	crossoverHertz: z.union([hertz, z.literal('full')]).optional(),
	polarityInverted: z.boolean().optional(),
});

/** What is dialled into one output of the bass processor. */
const outputSetting = z.looseObject({
	delayMs: stepped(milliseconds).optional(),
	gainDb: stepped(decibels).optional(),
	polarityInverted: z.boolean().optional(),
});

/** One set of settings, as found or as decided. */
export const settingsSet = z.looseObject({
	id,
	name: label.optional(),
	/** `found`: what stood before the round. `solved`: computed here. `entered`: typed in by hand. */
	origin: z.enum(['found', 'solved', 'entered']),
	decidedAt: isoDateTime.optional(),
	/** Digest of everything that the set was computed from, so that a stale set shows. */
	inputsHash: z.string().max(200).optional(),
	masterVolumeDb: decibels.optional(),
	lfeLowPassHertz: hertz.optional(),
	channels: z.partialRecord(channelId, channelSetting),
	/** Keyed by the processor's output. */
	outputs: z.record(z.string(), outputSetting).optional(),
	/** Ids of channels and outputs that the user has ticked as typed in. */
	dialledIn: z.array(z.string()).optional(),
});

export const signal = z.discriminatedUnion('kind', [
	z.looseObject({kind: z.literal('pink'), fromHertz: hertz, toHertz: hertz}),
	z.looseObject({kind: z.literal('tone'), hertz}),
]);

/** Settings that stood when a reading was taken: the id of a stored set, or the set itself without an id. */
export const inForce = z.union([id, settingsSet.omit({id: true, origin: true})]);

/** One reading of the level meter, kept as taken, without any correction. */
export const meterReading = z.looseObject({
	/** A channel, a sub, several of them at once, or `background`. */
	source: z.union([z.string().min(1).max(60), z.array(z.string().min(1).max(60)).min(1).max(64)]),
	seat: z.string().min(1).max(60),
	decibels,
	weighting: z.enum(['A', 'C', 'Z']),
	signal: signal.optional(),
	round: z.enum(['first', 'proof']),
	inForce: inForce.optional(),
	/** Sub delay added on purpose for a blend reading, on top of the settings in force. */
	addedDelayMs: milliseconds.optional(),
	note: z.string().max(500).optional(),
	takenAt: z.string().max(40).optional(),
	setAside: z.boolean().optional(),
});

/** A measured curve, held by the digest of its file. */
export const response = z.looseObject({
	source: z.union([z.string(), z.array(z.string())]),
	seat: z.string(),
	file: z.string().max(1000).optional(),
	sha256: z.string().max(200),
});

/** What the levels aim at. */
export const target = z.looseObject({
	/** Level of the test signal at the reference seat, dB unweighted; 75 where not given. */
	levelDb: decibels.optional(),
	/** Subs above (+) or below (−) the mains, dB. */
	subOffsetDb: decibels.optional(),
	seats: z.enum(['reference', 'weighted']).optional(),
	toleranceDb: z.number().positive().max(20).optional(),
});

/** Where the walk stands, so that it resumes at the very prompt. */
export const walkState = z.looseObject({
	prompt: z.string().max(200).optional(),
	skipped: z.array(z.string().max(200)).optional(),
	/** Id of the set that stands in the boxes while tones are read for the blend. */
	toneSet: z.string().max(60).optional(),
});
