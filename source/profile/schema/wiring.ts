import * as z from 'zod';
import {atLeast, id, label, metres, nonNegative} from './primitives.ts';

/**
One end of a cable: `box/terminal`. Boxes are `receiver`, `processor`, a channel (its speaker), a sub, a power
outlet's id, or any other thing with a name of its own. Terminals are free words: `receiver/FL`, `processor/A`,
`sub1/in`, `strip/mains 1`.
*/
const cableEnd = z
	.string()
	.min(3)
	.max(120)
	.regex(
		/^[^/\u0000-\u001f\u007f-\u009f\u061c\u2028-\u202e\u2066-\u2069]+\/[^/\u0000-\u001f\u007f-\u009f\u061c\u2028-\u202e\u2066-\u2069]+$/,
		'box/terminal, such as receiver/FL or sub1/in',
	);

export const connection = z.looseObject({
	id: id.describe('Name that others refer to.'),
	from: cableEnd.describe('One end, as box/terminal: receiver/FL, processor/A, sub1/in.'),
	to: cableEnd.describe('The other end.'),
	kind: z
		.enum(['speaker', 'line', 'mains', 'video', 'network', 'control'])
		.describe('What it carries, or what it is.'),
	label: label.optional().describe('What is printed on both ends; made from the ends where absent.'),
	route: label.optional().describe('Where the cable runs, in words.'),
	runMetres: metres.optional().describe('Length along the route as measured, without slack.'),
	slackMetres: metres
		.optional()
		.describe('Extra at both ends together; a tenth of the run, at least half a metre, where absent.'),
	awg: z
		.number()
		.int()
		.min(0)
		.max(40)
		.optional()
		.describe('Conductor as bought: gauge number or cross-section.'),
	areaSquareMillimetres: atLeast(0.01)
		.max(500)
		.optional()
		.describe('Cross-section of one conductor, square millimetres.'),
	impedanceOhms: atLeast(0.1)
		.max(1000)
		.optional()
		.describe("Rated impedance of the speaker at the end; the channel's own where absent."),
	screened: z.boolean().optional().describe('Whether it has a screen.'),
	polarity: z
		.enum(['checked', 'reversed'])
		.optional()
		.describe('Plus went to plus at both ends; `reversed` where a check found otherwise.'),
	done: z.boolean().optional().describe('It is in place.'),
});

/** A stretch where a mains cable and a signal cable run side by side. */
export const parallelRun = z.looseObject({
	mains: id.describe('Id of the mains cable.'),
	signal: id.describe('Id of the signal cable.'),
	parallelMetres: metres.describe('How far they run side by side, metres.'),
	gapMetres: metres.describe('Distance between them, metres.'),
	divider: z.enum(['none', 'aluminium', 'steel']).optional().describe('Metal between them.'),
});

export const outlet = z.looseObject({
	id: id.describe('Name that others refer to.'),
	name: label.describe('As shown to people.'),
	kind: z
		.enum(['strip', 'ups', 'wall'])
		.describe('A power strip, an uninterruptible supply, or an outlet of the wall.'),
	volts: atLeast(1).max(1000).describe('Mains voltage, volts.'),
	limitAmperes: atLeast(0.01).max(1000).optional().describe('Rating as printed on it; at least one of them.'),
	limitWatts: atLeast(1).max(100_000).optional().describe('Rating, watts.'),
	limitVoltAmperes: atLeast(1).max(100_000).optional().describe('Rating, volt-amperes.'),
});

export const mainsLoad = z.looseObject({
	name: label.describe('As shown to people.'),
	on: id.describe('Id of the outlet that it hangs on.'),
	watts: nonNegative.max(100_000).describe('Largest power drawn for minutes, from the plate at the back.'),
	powerFactor: atLeast(0.05).max(1).optional().describe('Watts by volt-amperes; 1 where not given.'),
});

/** Where a box stands, so that runs to it can be estimated: tape distances from two walls and the floor. */
export const equipment = z.looseObject({
	id: z.string().min(1).max(60).describe('Name that others refer to.'),
	leftWallMetres: metres.describe('From the left wall, metres.'),
	frontWallMetres: metres.describe('From the screen wall, metres.'),
	heightMetres: metres.optional().describe('Above the floor, metres.'),
});

export const wiringData = z.looseObject({
	connections: z.array(connection).max(2000).optional().describe('Cables, one for each connection.'),
	parallelRuns: z
		.array(parallelRun)
		.max(2000)
		.optional()
		.describe('Where a mains lead and a signal cable run side by side.'),
	outlets: z.array(outlet).max(100).optional().describe('Outlets and strips that gear hangs on.'),
	loads: z.array(mainsLoad).max(500).optional().describe('What hangs on the outlets, with its power.'),
	equipment: z.array(equipment).max(100).optional().describe('Boxes whose ends cables may name.'),
});
