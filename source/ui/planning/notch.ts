import type {LengthUnit, Room} from '../../profile/types.ts';
import {readLength} from '../../profile/units/length.ts';

const corners = {
	'front left': 'frontLeft',
	'front right': 'frontRight',
	'back left': 'backLeft',
	'back right': 'backRight',
} as const;

/**
Reads a corner that the room lacks, such as `back right 1.5m 2m`: which corner, how wide, how long; `none` where the floor
has four corners after all. A sentence where it is not understood.
*/
export function readNotch(text: string, unit: LengthUnit): NonNullable<Room['missingCorner']> | string {
	const words = text.trim().toLowerCase().split(/\s+/);
	if (words.length === 1 && words[0] === 'none') return 'none';
	const [end = '', side = '', ...sizes] = words;
	const name = `${end} ${side}`;
	const corner = Object.hasOwn(corners, name) ? corners[name as keyof typeof corners] : undefined;
	// Feet and inches have a space within, and fractions of an inch a stroke: the two lengths may have an x between them.
	const joined = sizes.join(' ');
	const between = /[x×]/.test(joined) ? /[x×]/ : '/';
	const parts = joined.split(between).length === 2 ? joined.split(between) : sizes;
	const [width, length] = parts.map(part => readLength(part.trim(), unit));
	if (!corner || parts.length !== 2 || width?.kind !== 'ok' || length?.kind !== 'ok')
		return `“${text.trim()}” is no corner. Such as: notch back right 1.5m 2m (its width, its length; an x between them where they have spaces), or notch none.`;
	return {corner, widthMetres: width.metres, lengthMetres: length.metres};
}
