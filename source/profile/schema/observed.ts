import * as z from 'zod';
import {channelId} from './gear.ts';
import {
	atLeast,
	decibels,
	finite,
	hertz,
	id,
	isoDate,
	isoDateTime,
	label,
	metres,
	milliseconds,
} from './primitives.ts';

/** A value as computed and as the box takes it. A set typed in by hand has only `stepped`. */
const stepped = (value: z.ZodType<number>) =>
	z.looseObject({
		exact: value.optional().describe('As computed; absent where it was typed in by hand.'),
		stepped: value.describe('As it stands in the box, on one of its steps.'),
	});

/** What is dialled into the receiver for one channel. Timing is a delay or a distance, as the receiver takes it. */
const channelSetting = z.looseObject({
	delayMs: stepped(milliseconds).optional().describe('Delay as entered, milliseconds.'),
	distanceMetres: stepped(metres).optional().describe('Distance as entered, metres.'),
	trimDb: stepped(decibels).optional().describe('Level trim, dB.'),
	crossoverHertz: z
		.union([hertz, z.literal('full')])
		.optional()
		.describe('Crossover frequency, or `full` for full range. Absent for LFE channels.'),
	polarityInverted: z.boolean().optional().describe('Plus and minus are exchanged.'),
});

/** What is dialled into one output of the bass processor. */
const outputSetting = z.looseObject({
	delayMs: stepped(milliseconds).optional().describe('Delay as entered, milliseconds.'),
	gainDb: stepped(decibels).optional().describe('Gain of the output, dB.'),
	polarityInverted: z.boolean().optional().describe('Plus and minus are exchanged.'),
});

/** One set of settings, as found or as decided. */
export const settingsSet = z.looseObject({
	id: id.describe('Name that readings refer to.'),
	name: label.optional().describe('As shown to people.'),
	origin: z
		.enum(['found', 'solved', 'entered'])
		.describe('`found`: what stood before the round. `solved`: computed here. `entered`: typed in by hand.'),
	decidedAt: isoDateTime.optional().describe('When it was decided.'),
	inputsHash: z
		.string()
		.max(200)
		.optional()
		.describe('Digest of everything that the set was computed from, so that a stale set shows.'),
	masterVolumeDb: decibels.optional().describe('Master volume as shown, dB.'),
	lfeLowPassHertz: hertz.optional().describe('Low-pass of the LFE channel, hertz.'),
	channels: z.partialRecord(channelId, channelSetting).describe('What is dialled in, by channel.'),
	outputs: z.record(id, outputSetting).optional().describe("Keyed by the processor's output."),
	dialledIn: z
		.array(z.string())
		.optional()
		.describe('Ids of channels and outputs that the user has ticked as typed in.'),
});

export const signal = z.discriminatedUnion('kind', [
	z.looseObject({
		kind: z.literal('pink').describe('Pink noise between two frequencies.'),
		fromHertz: hertz.describe('Lower limit, hertz.'),
		toHertz: hertz.describe('Upper limit, hertz.'),
	}),
	z.looseObject({
		kind: z.literal('tone').describe('A tone.'),
		hertz: hertz.describe('Its frequency, hertz.'),
	}),
]);

/** Settings that stood when a reading was taken: the id of a stored set, or the set itself without an id. */
export const inForce = z.union([id, settingsSet.omit({id: true, origin: true})]);

/** One reading of the level meter, kept as taken, without any correction. */
export const meterReading = z.looseObject({
	source: z
		.union([z.string().min(1).max(60), z.array(z.string().min(1).max(60)).min(1).max(64)])
		.describe('A channel, a sub, several of them at once, or `background`.'),
	seat: z.string().min(1).max(60).describe('The seat where the meter or microphone was.'),
	point: z
		.number()
		.int()
		.min(1)
		.max(5)
		.optional()
		.describe(
			'Which of up to five points around the seat: 1 is the ear (where not given), then 30 cm to its left, to its right, forward and back.',
		),
	decibels: decibels.describe('What the meter showed, dB.'),
	weighting: z.enum(['A', 'C', 'Z']).describe('Weighting of the meter.'),
	signal: signal.optional().describe('What played; the usual noise where not given.'),
	round: z
		.enum(['first', 'proof'])
		.describe('First: for the settings. Proof: with the settings in force, to check them.'),
	inForce: inForce
		.optional()
		.describe('What was dialled in meanwhile: the id of a stored set, or the values.'),
	addedDelayMs: milliseconds
		.optional()
		.describe('Sub delay added on purpose for a blend reading, on top of the settings in force.'),
	addedDelaySources: z
		.array(z.string().min(1).max(60))
		.min(1)
		.max(64)
		.optional()
		.describe(
			'Subs that the added delay concerned, where others were left as they stand. Where not given: all that sounded with a speaker, and without one the last of them.',
		),
	invertedSources: z
		.array(z.string().min(1).max(60))
		.max(64)
		.optional()
		.describe('Channels and subs that played inverted on purpose, against the settings in force.'),
	blendPart: z
		.enum(['search', 'verification'])
		.optional()
		.describe(
			'What noise of speakers with their subs is read for: to search the loudest of several settings, or to verify one (where not given).',
		),
	note: z.string().max(500).optional().describe('Anything worth keeping, in words.'),
	takenAt: z.string().max(40).optional().describe('When it was taken.'),
	setAside: z.boolean().optional().describe('Kept, but not computed with.'),
});

/** What the levels aim at. */
export const target = z.looseObject({
	levelDb: decibels
		.optional()
		.describe('Level of the test signal at the reference seat, dB unweighted; 75 where not given.'),
	subOffsetDb: decibels.optional().describe('Subs above (+) or below (−) the mains, dB.'),
	channelOffsetsDb: z
		.partialRecord(channelId, finite.min(-40).max(40))
		.optional()
		.describe('Level of single channels above (+) or below (−) the rest, dB.'),
	seats: z
		.enum(['reference', 'weighted'])
		.optional()
		.describe('Whose levels count: the reference seat alone, or all by their weights.'),
	toleranceDb: atLeast(0.01).max(20).optional().describe('How far a proof reading may be off, dB.'),
});

/** Where the walk stands, so that it resumes at the very prompt. */
export const walkState = z.looseObject({
	prompt: z.string().max(200).optional().describe('The question that the walk stands at.'),
	skipped: z.array(z.string().max(200)).optional().describe('Questions that were skipped.'),
	answered: z
		.array(z.string().max(200))
		.optional()
		.describe('Questions whose answer leaves no other trace, with the answer: tape:walls:no.'),
	startedFrom: isoDate.optional().describe('Day of the older round that readings came along from.'),
	toneSet: z
		.string()
		.max(60)
		.optional()
		.describe('Id of the set that stands in the boxes while tones are read for the blend.'),
	blendWay: z.enum(['tones', 'search']).optional().describe('Way of the blend that was chosen.'),
});
