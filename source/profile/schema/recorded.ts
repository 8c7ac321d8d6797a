import * as z from 'zod';
import {inForce} from './observed.ts';
import {atLeast, decibels, finite, hertz, id, label, milliseconds, nonNegative} from './primitives.ts';

const sources = z.array(z.string().min(1).max(60)).min(1).max(64);

/** What was changed on purpose for one playing against the settings in force, so that mains and subs can be told apart. */
export const playingState = z.looseObject({
	turned: sources.optional().describe('Subs whose polarity was turned.'),
	muted: sources.optional().describe('Subs that were muted.'),
	delayed: sources.optional().describe('Subs that were delayed.'),
	addedDelayMs: milliseconds.optional().describe('By how much, milliseconds.'),
});

/** The blend that a recorded round asks for: what to add to the settings in force while it was recorded. */
const foundBlend = z.looseObject({
	groups: z
		.array(
			z.looseObject({
				subs: sources.describe('Subs that move together.'),
				addedMs: milliseconds.describe('Delay to add, milliseconds.'),
				isTurned: z.boolean().describe('Whether their polarity is to be turned.'),
			}),
		)
		.min(1)
		.max(16)
		.describe('By group of subs.'),
	gainDb: decibels.describe('Expected gain through the crossover, mean over fronts and seats, dB.'),
});

/** One playing of a round as it was recorded. The recording itself stays where the user keeps it. */
export const recording = z.looseObject({
	id: id.describe('Referred to by its responses.'),
	file: label.describe('Base name and digest of the file.'),
	sha256: z.string().max(200).describe('Digest of the content.'),
	atSeconds: finite.describe('Where in the file the playing began, seconds.'),
	seat: z.string().min(1).max(60).describe('The seat where the microphone was.'),
	round: z
		.enum(['first', 'proof'])
		.describe('First: for the settings. Proof: with the settings in force, to check them.'),
	inForce: inForce
		.optional()
		.describe('What was dialled in meanwhile: the id of a stored set, or the values.'),
	state: playingState.optional().describe('What was changed on purpose for this playing.'),
	apartBy: z
		.enum(['change', 'lfe'])
		.optional()
		.describe(
			'How mains and subs were told apart: by further playings with one change, or from this one by its LFE sweep.',
		),
	clockPpm: finite.describe('How much faster than the player the recorder ran, ppm.'),
	blend: foundBlend.optional().describe('The blend that it asks for, with those recorded beside it.'),
	microphone: label.optional().describe("Base name of the microphone's curve, where one was taken off."),
	takenAt: z.string().max(40).optional().describe('When it was taken.'),
	setAside: z.boolean().optional().describe('Kept, but not computed with.'),
});

const octaveDecay = z.looseObject({
	hertz: hertz.describe('Nominal middle of the octave.'),
	rangeDb: decibels.describe('From the strongest to the noise, dB.'),
	edtSeconds: atLeast(0.001).max(60).optional().describe('Early decay time, seconds.'),
	t20Seconds: atLeast(0.001).max(60).optional().describe('Decay from −5 to −25 dB, for 60 dB, seconds.'),
	t30Seconds: atLeast(0.001).max(60).optional().describe('Decay from −5 to −35 dB, for 60 dB, seconds.'),
});

/** Levels to 0.01 dB and phases to 0.1°, at 10 to 300 Hz in 1/48 octave and above in 1/24 octave, as far as they reach. */
const points = z.looseObject({
	levelsDb: z.array(decibels).min(1).max(1000).describe('dB re the file.'),
	phasesDegrees: z
		.array(finite.min(-360).max(360))
		.min(1)
		.max(1000)
		.describe('Degrees, against the first channel’s first sound.'),
});

/** A measured curve: of one line at one seat, or text columns from anywhere held by the digest of their file. */
export const response = z.looseObject({
	source: z
		.union([z.string(), z.array(z.string())])
		.describe('A channel with all that sounds when it plays, or subs alone.'),
	seat: z.string().describe('The seat where the microphone was.'),
	part: z
		.enum(['all', 'main', 'subs'])
		.optional()
		.describe(
			'What of it: everything, the main speaker without subs, or the subs without it. Everything where not given.',
		),
	crossoverHertz: hertz
		.optional()
		.describe('Crossover of the channels whose subs these are, hertz; any where not given.'),
	recording: z
		.string()
		.max(60)
		.optional()
		.describe('The playing it comes from; the first of them where several were needed.'),
	round: z.enum(['first', 'proof']).optional().describe('As of its recording.'),
	file: z.string().max(1000).optional().describe('Name of the file that it was read from.'),
	sha256: z.string().max(200).describe('Digest of the content.'),
	arrivalMs: milliseconds.optional().describe("First sound against the first channel's, and how sure, ms."),
	arrivalSigmaMs: nonNegative.optional().describe('Standard uncertainty of the arrival, milliseconds.'),
	laterMs: milliseconds.optional().describe("A later, stronger sound against the first channel's, ms."),
	polarity: z.enum(['plus', 'minus']).optional().describe('Sign of the direct sound as recorded.'),
	levelDb: decibels
		.optional()
		.describe("Level in the meter's band of its kind, and from 28.2 to 112.2 Hz, dB re the file."),
	bassLevelDb: decibels.optional().describe('From 28.2 to 112.2 Hz, dB re the file.'),
	noiseBelowDb: decibels.optional().describe('Noise below the strongest of the response, dB.'),
	scatterDb: nonNegative
		.optional()
		.describe('Scatter of what was averaged, dB, where several gave the same.'),
	c50Db: decibels.optional().describe('Clarity, limit at 50 ms, dB.'),
	decays: z.array(octaveDecay).max(20).optional().describe('Decay by octave.'),
	points: points.optional().describe('The complex response.'),
	setAside: z.boolean().optional().describe('Kept, but not computed with.'),
});
