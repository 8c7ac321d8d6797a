import * as z from 'zod';

/** A finite number; JSON cannot hold NaN or Infinity, but a number too large for a double reads as Infinity. */
export const finite = z.number();
export const nonNegative = finite.nonnegative();

/**
A quantity that is never nothing. Below the least that can be meant arithmetic ends in infinities: a resistance of
5e-324 ohms is a slip, and is told as one.
*/
export const atLeast = (least: number): z.ZodNumber => finite.min(least);

/** A tape length in metres. Nothing in a home room is a kilometre away; larger values are slips of unit. */
export const metres = nonNegative.max(1000);
/** A size of something that is there. */
export const positiveMetres = atLeast(0.001).max(1000);
export const hertz = atLeast(1).max(200_000);
/** The finest division of a scale; finer ones are not told apart in the values that stand on it. */
export const finestStep = 0.0001;
export const milliseconds = finite.min(-10_000).max(10_000);
export const decibels = finite.min(-300).max(300);

/** A short name that may appear in lists and tables: one line, no control characters. */
export const label = z
	.string()
	.min(1)
	.max(120)
	.regex(
		/^[^\u0000-\u001f\u007f-\u009f\u061c\u2028-\u202e\u2066-\u2069]*$/,
		'one line without control characters or turns of the direction of writing',
	);

/** An id that tape and meter readings refer to: letters, digits, dot, dash, underscore. */
export const id = z
	.string()
	.min(1)
	.max(60)
	.regex(/^[A-Za-z][A-Za-z0-9._-]*$/, 'a letter, then letters, digits, dot, dash or underscore');

export const isoDate = z.iso.date();
export const isoDateTime = z.iso.datetime({offset: true});
