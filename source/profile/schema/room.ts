import * as z from 'zod';
import {finite, id, label, metres, positive, positiveMetres} from './primitives.ts';

const flatCeiling = z.looseObject({kind: z.literal('flat'), heightMetres: positiveMetres});
const slopedCeiling = z.looseObject({
	kind: z.literal('sloped'),
	/** The pair of opposite walls between which the height changes. */
	between: z.enum(['wall:left-wall:right', 'wall:front-wall:back']),
	/** Height above the floor at the first and at the second of the two walls, metres. */
	heightsMetres: z.tuple([positiveMetres, positiveMetres]),
});

const brokenCeiling = z.looseObject({
	kind: z.literal('broken'),
	/** The pair of opposite walls between which the height changes; along the other pair it stays the same. */
	between: z.enum(['wall:left-wall:right', 'wall:front-wall:back']),
	/** Heights at two to eight places, from the first of the two walls (0 m) to the second: sloped, gabled, broken. */
	places: z
		.array(z.looseObject({atMetres: finite.min(0).max(1000), heightMetres: finite.min(0).max(1000)}))
		.min(2)
		.max(8),
});

/** A corner that the room lacks: its floor is an L. */
const missingCorner = z.looseObject({
	/** As seen from the seat facing the screen. */
	corner: z.enum(['frontLeft', 'frontRight', 'backLeft', 'backRight']),
	/** From left to right, metres. */
	widthMetres: positiveMetres,
	/** From the screen wall to the back, metres. */
	lengthMetres: positiveMetres,
});

/** Something on a wall: where along it, and between which heights. */
const wallFeature = z.looseObject({
	on: z.enum(['wall:left', 'wall:right', 'wall:front', 'wall:back']),
	kind: z.enum(['door', 'opening', 'window', 'radiator', 'furniture', 'notHere']),
	/** Along the wall: from the screen wall on the left and right walls, from the left wall on the others, metres. */
	fromMetres: finite.min(0).max(1000),
	toMetres: finite.min(0).max(1000),
	/** Lower and upper edge above the floor, metres; the whole wall where not given. */
	lowMetres: finite.min(0).max(1000).optional(),
	highMetres: finite.min(0).max(1000).optional(),
	/** How far into the room a door swings, metres; 0 where it opens the other way. */
	swingMetres: finite.min(0).max(1000).optional(),
	note: z.string().max(500).optional(),
});

/** A rectangle of the floor that is taken or must stay free. */
const floorFeature = z.looseObject({
	on: z.literal('floor'),
	kind: z.enum(['furniture', 'walkway', 'notHere']),
	/** From the left wall, metres. */
	leftMetres: finite.min(0).max(1000),
	rightMetres: finite.min(0).max(1000),
	/** From the screen wall, metres. */
	nearMetres: finite.min(0).max(1000),
	farMetres: finite.min(0).max(1000),
	note: z.string().max(500).optional(),
});

/**
The room. Width runs from the left wall to the right, length from the screen wall to the back.
A dimension given here is taken as exact; one measured by tape is a tape reading between two planes.
*/
export const room = z.looseObject({
	name: label,
	widthMetres: positiveMetres.optional(),
	lengthMetres: positiveMetres.optional(),
	ceiling: z.discriminatedUnion('kind', [flatCeiling, slopedCeiling, brokenCeiling]).optional(),
	missingCorner: missingCorner.optional(),
	/** What stands in the way or must stay free: doors, windows, radiators, furniture, walkways, “not here”. */
	features: z
		.array(z.discriminatedUnion('on', [wallFeature, floorFeature]))
		.max(200)
		.optional(),
	/** Reverberation time in the bass, seconds, where known. */
	decaySeconds: positive.max(30).optional(),
	/** What the room adds in the bass over open space, dB, where measured; 0 where not given. */
	bassGainDb: finite.min(-20).max(20).optional(),
});

/** Air in the room while measuring. */
export const air = z.looseObject({
	temperatureCelsius: finite.min(-20).max(50).optional(),
	humidityPercent: finite.min(0).max(100).optional(),
	pressurePascals: finite.min(50_000).max(110_000).optional(),
});

/** The picture, not the frame. Its centre is the tape end `screen`. */
export const screen = z.looseObject({
	widthMetres: positiveMetres.optional(),
	heightMetres: positiveMetres.optional(),
});

export const seat = z.looseObject({
	id,
	name: label,
	reference: z.boolean().optional(),
	/** Share in a weighted target; 1 where not given. */
	weight: finite.nonnegative().max(1000).optional(),
});

/** One tape reading, kept as taken. Ends: a channel (its speaker), a sub, a seat, `screen`, or a plane. */
export const tapeReading = z.looseObject({
	from: z.string().min(1).max(60),
	to: z.string().min(1).max(60),
	metres,
	sigmaMetres: positiveMetres.optional(),
	note: z.string().max(500).optional(),
	takenAt: z.string().max(40).optional(),
	/** A reading that the user has put aside; kept, but not computed with. */
	setAside: z.boolean().optional(),
});

/** Where one thing is to stand: a channel's speaker, a sub, a seat's ear or `screen`, metres in the room's frame. */
const plannedPlace = z.looseObject({
	id: z.string().min(1).max(60),
	xMetres: finite.min(-1000).max(1000),
	yMetres: finite.min(-1000).max(1000),
	zMetres: finite.min(-1000).max(1000),
});

/** Where things are to stand, decided before they are carried. What is not named stays where it is. */
export const planned = z.looseObject({
	places: z.array(plannedPlace).max(200),
	/** How much worse the bass gets, dB, where things end up within `withinMetres` of their places: from the plan's own draws. */
	withinMetres: positiveMetres.optional(),
	costDb: finite.min(0).max(100).optional(),
	note: z.string().max(500).optional(),
});
