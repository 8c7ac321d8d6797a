import * as z from 'zod';
import {currentFormat} from '../format.ts';
import {bassProcessor, channel, kit, receiver, sub} from './gear.ts';
import {meterReading, settingsSet, target, walkState} from './observed.ts';
import {isoDate, label} from './primitives.ts';
import {recording, response} from './recorded.ts';
import {air, planned, room, screen, seat, tapeReading} from './room.ts';
import {wiringData} from './wiring.ts';

/**
A profile: one arrangement of one room on one date, with everything measured and decided.
This is the single source: types are inferred from it and the shipped JSON Schema is generated from it.
Rules that span several fields (ids that must exist, one reference seat) are checked in `rules.ts`.
*/
export const profileSchema = z
	.looseObject({
		format: z.literal(currentFormat).describe('Number of this format.'),
		name: label.describe('As shown to people.'),
		date: isoDate.describe('The day, YYYY-MM-DD.'),
		note: z.string().max(5000).optional().describe('Anything worth keeping, in words.'),
		lengthUnit: z
			.enum(['ft-in', 'ft', 'm', 'cm'])
			.optional()
			.describe('How lengths are shown and read; files always hold metres.'),
		room: room.describe('The room.'),
		air: air.optional().describe('Air while measuring.'),
		screen: screen.optional().describe('The picture.'),
		planned: planned.optional().describe('Where things are to stand.'),
		seats: z.array(seat).min(1).max(100).describe('Listening positions at ear height; one is the reference.'),
		channels: z.array(channel).min(1).max(64).describe('Outputs of the receiver, each with its speaker.'),
		subs: z.array(sub).max(32).optional().describe('Subwoofers.'),
		receiver: receiver.optional().describe('What the receiver can take.'),
		bassProcessor: bassProcessor.optional().describe('A box between the receiver and the subs.'),
		kit: kit.optional().describe('Tape and meter.'),
		target: target.optional().describe('What the levels aim at.'),
		tape: z.array(tapeReading).optional().describe('Tape readings, each kept as taken.'),
		meter: z.array(meterReading).optional().describe('Meter readings, each kept as taken.'),
		settings: z
			.array(settingsSet)
			.max(1000)
			.optional()
			.describe('Sets of settings, as found and as decided.'),
		wiring: wiringData.optional().describe('Cables and power.'),
		walk: walkState.optional().describe('Where the walk stands.'),
		recordings: z
			.array(recording)
			.max(10_000)
			.optional()
			.describe('Playings of a round as they were recorded.'),
		// Last, so that who needs no curves may stop reading before them.
		responses: z.array(response).max(10_000).optional().describe('Measured curves.'),
	})
	.describe(
		'One arrangement of one room on one date. SI units, named in each key; left and right as seen from the seat facing the screen. Settings need a receiver, one seat with reference: true, channels, and for each of them a tape reading to that seat and a meter reading there.',
	);
