import * as z from 'zod';
import {id, label, metres, nonNegative, positive} from './primitives.ts';

/**
One end of a cable: `box/terminal`. Boxes are `receiver`, `processor`, a channel (its speaker), a sub, a power
outlet's id, or any other thing with a name of its own. Terminals are free words: `receiver/FL`, `processor/A`,
`sub1/in`, `strip/mains 1`.
*/
const cableEnd = z
	.string()
	.min(3)
	.max(120)
	.regex(/^[^/\u0000-\u001f]+\/[^/\u0000-\u001f]+$/, 'box/terminal, such as receiver/FL or sub1/in');

export const connection = z.looseObject({
	id,
	from: cableEnd,
	to: cableEnd,
	kind: z.enum(['speaker', 'line', 'mains', 'video', 'network', 'control']),
	/** What is printed on both ends; made from the ends where absent. */
	label: label.optional(),
	/** Where the cable runs, in words. */
	route: label.optional(),
	/** Length along the route as measured, without slack. */
	runMetres: metres.optional(),
	/** Extra at both ends together; a tenth of the run, at least half a metre, where absent. */
	slackMetres: metres.optional(),
	/** Conductor as bought: gauge number or cross-section. */
	awg: z.number().int().min(0).max(40).optional(),
	areaSquareMillimetres: positive.max(500).optional(),
	/** Rated impedance of the speaker at the end; the channel's own where absent. */
	impedanceOhms: positive.max(1000).optional(),
	screened: z.boolean().optional(),
	/** Plus went to plus at both ends; `reversed` where a check found otherwise. */
	polarity: z.enum(['checked', 'reversed']).optional(),
	done: z.boolean().optional(),
});

/** A stretch where a mains cable and a signal cable run side by side. */
export const parallelRun = z.looseObject({
	mains: id,
	signal: id,
	parallelMetres: metres,
	gapMetres: metres,
	divider: z.enum(['none', 'aluminium', 'steel']).optional(),
});

export const outlet = z.looseObject({
	id,
	name: label,
	kind: z.enum(['strip', 'battery backup', 'wall']),
	volts: positive.max(1000),
	/** Rating as printed on it; at least one of them. */
	limitAmperes: positive.max(1000).optional(),
	limitWatts: positive.max(100_000).optional(),
	limitVoltAmperes: positive.max(100_000).optional(),
});

export const load = z.looseObject({
	name: label,
	on: id,
	/** Largest power drawn for minutes, from the plate at the back. */
	watts: nonNegative.max(100_000),
	powerFactor: positive.max(1).optional(),
});

/** Where a box stands, so that runs to it can be estimated: tape distances from two walls and the floor. */
export const equipment = z.looseObject({
	id: z.string().min(1).max(60),
	leftWallMetres: metres,
	frontWallMetres: metres,
	heightMetres: metres.optional(),
});

export const wiring = z.looseObject({
	connections: z.array(connection).max(2000).optional(),
	parallelRuns: z.array(parallelRun).max(2000).optional(),
	outlets: z.array(outlet).max(100).optional(),
	loads: z.array(load).max(500).optional(),
	equipment: z.array(equipment).max(100).optional(),
});
