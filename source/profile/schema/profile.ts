import * as z from 'zod';
import {currentFormat} from '../format.ts';
import {bassProcessor, channel, kit, receiver, sub} from './gear.ts';
import {meterReading, response, settingsSet, target, walkState} from './observed.ts';
import {isoDate, label} from './primitives.ts';
import {air, planned, room, screen, seat, tapeReading} from './room.ts';
import {wiring} from './wiring.ts';

/**
A profile: one arrangement of one room on one date, with everything measured and decided.
This is the single source: types are inferred from it and the shipped JSON Schema is generated from it.
Rules that span several fields (ids that must exist, one reference seat) are checked in `rules.ts`.
*/
export const profileSchema = z.looseObject({
	format: z.literal(currentFormat),
	name: label,
	date: isoDate,
	note: z.string().max(5000).optional(),
	/** How lengths are shown and read; files always hold metres. */
	lengthUnit: z.enum(['ft-in', 'ft', 'm', 'cm']).optional(),
	room,
	air: air.optional(),
	screen: screen.optional(),
	planned: planned.optional(),
	seats: z.array(seat).min(1).max(100),
	channels: z.array(channel).min(1).max(64),
	subs: z.array(sub).max(32).optional(),
	receiver: receiver.optional(),
	bassProcessor: bassProcessor.optional(),
	kit: kit.optional(),
	target: target.optional(),
	tape: z.array(tapeReading).optional(),
	meter: z.array(meterReading).optional(),
	responses: z.array(response).max(10_000).optional(),
	settings: z.array(settingsSet).max(1000).optional(),
	wiring: wiring.optional(),
	walk: walkState.optional(),
});
