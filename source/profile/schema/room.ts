import * as z from 'zod';
import {atLeast, finestStep, finite, id, label, metres, positiveMetres} from './primitives.ts';

const flatCeiling = z.looseObject({
	kind: z.literal('flat').describe('Which of the forms this is.'),
	heightMetres: positiveMetres.describe('Height above the floor everywhere, metres.'),
});
const slopedCeiling = z.looseObject({
	kind: z.literal('sloped').describe('Which of the forms this is.'),
	between: z
		.enum(['wall:left-wall:right', 'wall:front-wall:back'])
		.describe('The pair of opposite walls between which the height changes.'),
	heightsMetres: z
		.tuple([positiveMetres, positiveMetres])
		.describe('Height above the floor at the first and at the second of the two walls, metres.'),
});

const brokenCeiling = z.looseObject({
	kind: z.literal('broken').describe('Which of the forms this is.'),
	between: z
		.enum(['wall:left-wall:right', 'wall:front-wall:back'])
		.describe(
			'The pair of opposite walls between which the height changes; along the other pair it stays the same.',
		),
	places: z
		.array(
			z.looseObject({
				atMetres: finite.min(0).max(1000).describe('Distance from the first of the two walls, metres.'),
				heightMetres: finite.min(0).max(1000).describe('Height above the floor there, metres.'),
			}),
		)
		.min(2)
		.max(8)
		.describe('Two to eight places where the slope changes, from the first of the two walls to the second.'),
});

/** A corner that the room lacks: its floor is an L. */
const missingCorner = z.looseObject({
	corner: z
		.enum(['frontLeft', 'frontRight', 'backLeft', 'backRight'])
		.describe('As seen from the seat facing the screen.'),
	widthMetres: positiveMetres.describe('From left to right, metres.'),
	lengthMetres: positiveMetres.describe('From the screen wall to the back, metres.'),
});

/** Something on a wall: where along it, and between which heights. */
const wallFeature = z.looseObject({
	on: z
		.enum(['wall:left', 'wall:right', 'wall:front', 'wall:back'])
		.describe('The wall that it is on; wall:front is the screen wall.'),
	kind: z
		.enum(['door', 'opening', 'window', 'radiator', 'furniture', 'notHere'])
		.describe('Which of the forms this is.'),
	fromMetres: finite
		.min(0)
		.max(1000)
		.describe(
			'Along the wall: from the screen wall on the left and right walls, from the left wall on the others, metres.',
		),
	toMetres: finite.min(0).max(1000).describe('Its other end along the wall, metres.'),
	lowMetres: finite
		.min(0)
		.max(1000)
		.optional()
		.describe('Lower edge above the floor, metres; the floor where not given.'),
	highMetres: finite
		.min(0)
		.max(1000)
		.optional()
		.describe('Upper edge above the floor, metres; the ceiling where not given.'),
	swingMetres: finite
		.min(0)
		.max(1000)
		.optional()
		.describe('How far into the room a door swings, metres; 0 where it opens the other way.'),
	note: z.string().max(500).optional().describe('Anything worth keeping, in words.'),
});

/** A rectangle of the floor that is taken or must stay free. */
const floorFeature = z.looseObject({
	on: z.literal('floor').describe('A rectangle of the floor.'),
	kind: z.enum(['furniture', 'walkway', 'notHere']).describe('Which of the forms this is.'),
	leftMetres: finite.min(0).max(1000).describe('Its left edge from the left wall, metres.'),
	rightMetres: finite.min(0).max(1000).describe('Its right edge from the left wall, metres.'),
	nearMetres: finite.min(0).max(1000).describe('Its near edge from the screen wall, metres.'),
	farMetres: finite.min(0).max(1000).describe('Its far edge from the screen wall, metres.'),
	note: z.string().max(500).optional().describe('Anything worth keeping, in words.'),
});

/**
The room. Width runs from the left wall to the right, length from the screen wall to the back.
A dimension given here is taken as exact; one measured by tape is a tape reading between two planes.
*/
export const room = z.looseObject({
	name: label.describe('As shown to people.'),
	widthMetres: positiveMetres.optional().describe('Width, from left to right, metres.'),
	lengthMetres: positiveMetres.optional().describe('Length, from the screen wall to the back, metres.'),
	ceiling: z
		.discriminatedUnion('kind', [flatCeiling, slopedCeiling, brokenCeiling])
		.optional()
		.describe('Flat, sloped or broken.'),
	missingCorner: missingCorner.optional().describe('A corner that the room lacks.'),
	features: z
		.array(z.discriminatedUnion('on', [wallFeature, floorFeature]))
		.max(200)
		.optional()
		.describe(
			'What stands in the way or must stay free: doors, windows, radiators, furniture, walkways, not here.',
		),
	decaySeconds: atLeast(0.01)
		.max(30)
		.optional()
		.describe('Reverberation time in the bass, seconds, where known.'),
	bassGainDb: finite
		.min(-20)
		.max(20)
		.optional()
		.describe('What the room adds in the bass over open space, dB, where measured; 0 where not given.'),
});

/** Air in the room while measuring. */
export const air = z.looseObject({
	temperatureCelsius: finite.min(-20).max(50).optional().describe('Degrees Celsius.'),
	humidityPercent: finite.min(0).max(100).optional().describe('Relative humidity, percent.'),
	pressurePascals: finite.min(50_000).max(110_000).optional().describe('Air pressure, pascals.'),
});

/** The picture, not the frame. Its centre is the tape end `screen`. */
export const screen = z.looseObject({
	widthMetres: positiveMetres.optional().describe('Width, from left to right, metres.'),
	heightMetres: positiveMetres.optional().describe('Height, metres.'),
});

export const seat = z.looseObject({
	id: id.describe('Name that readings refer to.'),
	name: label.describe('As shown to people.'),
	reference: z.boolean().optional().describe('True at the one seat that the settings are made for.'),
	weight: finite
		.nonnegative()
		.max(1000)
		.optional()
		.describe('Share in a weighted target; 1 where not given.'),
});

/** One tape reading, kept as taken. Ends: a channel (its speaker), a sub, a seat, `screen`, or a plane. */
export const tapeReading = z.looseObject({
	from: z
		.string()
		.min(1)
		.max(60)
		.describe(
			'One end: a channel, a sub, a seat, screen, wall:left, wall:right, wall:front, wall:back, floor or ceiling.',
		),
	to: z.string().min(1).max(60).describe('The other end.'),
	metres: metres.describe('What the tape showed, metres.'),
	sigmaMetres: atLeast(finestStep)
		.max(1000)
		.optional()
		.describe('Standard deviation of this reading, metres; from tape and distance where not given.'),
	note: z.string().max(500).optional().describe('Anything worth keeping, in words.'),
	takenAt: z.string().max(40).optional().describe('When it was taken.'),
	setAside: z
		.boolean()
		.optional()
		.describe('A reading that the user has put aside; kept, but not computed with.'),
});

/** Where one thing is to stand: a channel's speaker, a sub, a seat's ear or `screen`, metres in the room's frame. */
const plannedPlace = z.looseObject({
	id: z.string().min(1).max(60).describe('A channel, for its speaker; a sub, a seat, or screen.'),
	xMetres: finite.min(-1000).max(1000).describe('From the left wall, metres.'),
	yMetres: finite.min(-1000).max(1000).describe('From the screen wall, metres.'),
	zMetres: finite.min(-1000).max(1000).describe('Above the floor, metres.'),
});

/** Where things are to stand, decided before they are carried. What is not named stays where it is. */
export const planned = z.looseObject({
	places: z.array(plannedPlace).max(200).describe('One place for each thing that is to move.'),
	withinMetres: positiveMetres
		.optional()
		.describe('How near to its place is near enough, metres, for `costDb`.'),
	costDb: finite
		.min(0)
		.max(100)
		.optional()
		.describe('How much worse the bass gets at most, dB, within `withinMetres` of the places.'),
	note: z.string().max(500).optional().describe('Anything worth keeping, in words.'),
});
