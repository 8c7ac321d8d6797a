import * as z from 'zod';
import {type ChannelId, channelIds} from '../channels.ts';
import {
	atLeast,
	decibels,
	finestStep,
	finite,
	hertz,
	id,
	label,
	milliseconds,
	nonNegative,
	positiveMetres,
} from './primitives.ts';

export const channelId = z.enum(channelIds as [ChannelId, ...ChannelId[]]);

const lowLimitDropDb = z.union([z.literal(3), z.literal(6), z.literal(10)]);

const boxWidth = atLeast(0.05).max(3).optional().describe('Width of its box, metres.');
const boxDepth = atLeast(0.05).max(3).optional().describe('Depth of its box from front to back, metres.');

/** What a data sheet says of a speaker and its amplifier; every field may be missing. */
export const speakerData = z.looseObject({
	boxWidthMetres: boxWidth,
	boxDepthMetres: boxDepth,
	sensitivityDb: decibels.optional().describe('Sensitivity at 1 m as stated, dB.'),
	sensitivityFor: z
		.enum(['1 W', '2.83 V'])
		.optional()
		.describe('Sensitivities are stated at 1 m for one watt, or for 2.83 V whatever the impedance.'),
	impedanceOhms: atLeast(0.1).max(1000).optional().describe('Nominal impedance, ohms.'),
	amplifierWatts: atLeast(0.001)
		.max(100_000)
		.optional()
		.describe('Continuous power of the amplifier into that impedance, watts.'),
	lowLimitHertz: hertz
		.optional()
		.describe(
			'Low-frequency limit and how far down the response is there (3, 6 or 10 dB; 3 where not given).',
		),
	lowLimitDropDb: lowLimitDropDb
		.optional()
		.describe('How far down the response is at the limit, dB; 3 where not given.'),
	box: z.enum(['closed', 'vented']).optional().describe('Closed or vented (ported).'),
	totalQ: atLeast(0.05)
		.max(10)
		.optional()
		.describe('Total Q of a closed box; Butterworth (0.7071) where not given.'),
});

export const channel = z.looseObject({
	id: channelId.describe(
		'Name that readings and settings refer to: its abbreviation in IEC 62574 (FL front left, TpSiL top side left, …). LFE channels have subs, no speaker.',
	),
	speaker: speakerData.optional().describe('What its data sheet and its amplifier say.'),
	latencyMs: nonNegative
		.max(1000)
		.optional()
		.describe("A wireless link or converter in this channel's line, stated once here."),
	latencyFrom: label.optional().describe('Where that latency is known from.'),
	fixed: z.boolean().optional().describe('The speaker cannot be moved (built in, rented wall, …).'),
});

/** A subwoofer. It is fed by an LFE output of the receiver, directly or through an output of the bass processor. */
export const sub = z.looseObject({
	id: id.describe('Name that readings and settings refer to.'),
	name: label.describe('As shown to people.'),
	boxWidthMetres: boxWidth,
	boxDepthMetres: boxDepth,
	fedBy: z.enum(['LFE1', 'LFE2']).describe('The output of the receiver that feeds it.'),
	processorOutput: id.optional().describe('Output of the bass processor that it hangs on.'),
	latencyMs: nonNegative
		.max(1000)
		.optional()
		.describe("Latency of the sub's own electronics or wireless link."),
	lowLimitHertz: hertz.optional().describe('Low-frequency limit, hertz.'),
	lowLimitDropDb: lowLimitDropDb
		.optional()
		.describe('How far down the response is at the limit, dB; 3 where not given.'),
	upperLimitHertz: hertz.optional().describe('Upper limit of the response, hertz.'),
	box: z.enum(['closed', 'vented']).optional().describe('Closed or vented (ported).'),
	totalQ: atLeast(0.05)
		.max(10)
		.optional()
		.describe('Total Q of a closed box; Butterworth (0.7071) where not given.'),
	maximumLevelDb: decibels
		.optional()
		.describe(
			'Largest level at 1 m that the maker states, half space, dB; where not given it is made from sensitivity and power.',
		),
	sensitivityDb: decibels.optional().describe('Sensitivity at 1 m in half space, dB, as for a speaker.'),
	sensitivityFor: z
		.enum(['1 W', '2.83 V'])
		.optional()
		.describe('What the sensitivity is stated for: one watt, or 2.83 V whatever the impedance.'),
	impedanceOhms: atLeast(0.1).max(1000).optional().describe('Nominal impedance, ohms.'),
	amplifierWatts: atLeast(0.001)
		.max(100_000)
		.optional()
		.describe('Continuous power of the amplifier into that impedance, watts.'),
	fixed: z.boolean().optional().describe('It cannot be moved.'),
});

/** How the receiver takes timing: as the distance of the speaker, or as a delay. */
const distanceEntry = z.looseObject({
	kind: z.literal('distance').describe('Which of the forms this is.'),
	shownIn: z.enum(['m', 'cm', 'ft', 'in']).describe("The unit shown on the receiver's screen."),
	stepMetres: atLeast(finestStep).max(10).describe('Smallest step of the entry, metres.'),
	minimumMetres: nonNegative.max(1000).describe('Smallest entry, metres.'),
	maximumMetres: positiveMetres.describe('Largest entry, metres.'),
	speedOfSoundMetresPerSecond: finite
		.min(250)
		.max(450)
		.optional()
		.describe("The receiver's own constant; 343 m/s where not given."),
});
const delayEntry = z.looseObject({
	kind: z.literal('delay').describe('Which of the forms this is.'),
	stepMs: atLeast(finestStep).max(100).describe('Smallest step, milliseconds.'),
	minimumMs: milliseconds.describe('Smallest entry, milliseconds.'),
	maximumMs: milliseconds.describe('Largest entry, milliseconds.'),
});

/** Steps of a level control, dB. */
export const levelSteps = z.looseObject({
	stepDb: atLeast(finestStep).max(20).describe('Smallest step, dB.'),
	minimumDb: decibels.describe('Smallest value, dB.'),
	maximumDb: decibels.describe('Largest value, dB.'),
});

const filterShape = z.looseObject({
	kind: z.enum(['butterworth', 'linkwitz-riley']).describe('Which of the forms this is.'),
	order: z
		.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4), z.literal(6), z.literal(8)])
		.describe('Order: 2 falls by 12 dB an octave, 4 by 24.'),
});

/** The receiver, described only by what it can take. */
export const receiver = z.looseObject({
	name: label.optional().describe('As shown to people.'),
	timing: z
		.discriminatedUnion('kind', [distanceEntry, delayEntry])
		.describe('How it takes timing: as the distance of each speaker, or as its delay.'),
	trim: levelSteps.describe('Level trims of its channels.'),
	crossover: z
		.looseObject({
			choicesHertz: z
				.array(hertz)
				.min(1)
				.max(100)
				.describe('Crossover frequencies to choose from, hertz, rising.'),
			scope: z
				.enum(['per channel', 'common'])
				.describe('One frequency for all channels, or a choice for each.'),
			fullRange: z.boolean().optional().describe('Whether a speaker can be set to full range.'),
			highPass: filterShape
				.optional()
				.describe('What the crossover takes from speakers; Butterworth of order 2 where not given.'),
			lowPass: filterShape
				.optional()
				.describe('What it leaves to the subs; Linkwitz-Riley of order 4 where not given.'),
			lfeLowPassChoicesHertz: z
				.array(hertz)
				.max(100)
				.optional()
				.describe('Low-pass of the LFE channel: frequencies to choose from, hertz.'),
		})
		.describe('Bass management: what goes to the subs.'),
	subOutputs: z.number().int().min(0).max(8).describe('Number of outputs for subs.'),
	invertsSubs: z.boolean().optional().describe('Whether it can invert the polarity of a sub output.'),
});

/** An outboard processor between the receiver's sub outputs and the subs. */
export const bassProcessor = z.looseObject({
	name: label.optional().describe('As shown to people.'),
	latencyMs: nonNegative
		.max(1000)
		.describe('Latency of a wireless link, converter or box in this line, milliseconds, stated once, here.'),
	outputs: z.array(id).min(1).max(32).describe('Names of its outputs.'),
	delay: z
		.looseObject({
			stepMs: atLeast(finestStep).max(100).describe('Smallest step, milliseconds.'),
			minimumMs: milliseconds.describe('Smallest delay, milliseconds.'),
			maximumMs: milliseconds.describe('Largest delay, milliseconds.'),
		})
		.describe('Delays of its outputs.'),
	gain: levelSteps.describe('Gains of its outputs.'),
	invertsOutputs: z.boolean().optional().describe('Whether it can invert the polarity of an output.'),
});

/** The tape and the meter, where they differ from the usual. */
export const kit = z.looseObject({
	tapeShownIn: z
		.enum(['ft-in', 'ft', 'm', 'cm'])
		.optional()
		.describe('How the tape is marked, whatever unit lengths are shown in.'),
	wireSystem: z
		.enum(['awg', 'metric'])
		.optional()
		.describe('How conductors are sold: by gauge number, or by square millimetres.'),
	tapeStepMetres: atLeast(finestStep)
		.max(1)
		.optional()
		.describe('Smallest division that the tape is read to, metres.'),
	tapeHeldMetres: z
		.looseObject({
			seat: nonNegative.max(0.5).optional().describe("At a seat's ear."),
			centre: nonNegative.max(0.5).optional().describe('At the centre of a speaker, sub or screen.'),
			plane: nonNegative.max(0.5).optional().describe('At a wall, floor or ceiling.'),
		})
		.optional()
		.describe(
			'How well an end of the tape is held, one standard deviation each, metres; 0.012, 0.007 and 0.007 where not given.',
		),
	meterOffsetDb: finite
		.min(-20)
		.max(20)
		.optional()
		.describe('Added to each reading of the meter, from its calibration.'),
	meterSigmaDb: atLeast(0.01)
		.max(10)
		.optional()
		.describe(
			'How far two readings of the same thing differ, one standard deviation; 0.5 dB where not given.',
		),
	meterWeighting: z.enum(['A', 'C', 'Z']).optional().describe('Weighting that the meter is set to.'),
	meterPlaceMarked: z
		.boolean()
		.optional()
		.describe(
			'Whether the place of the meter is marked, by a stand or tape on the floor, so that it stands there again.',
		),
});
