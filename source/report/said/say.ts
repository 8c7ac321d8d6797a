import {type Named, nameOf} from '../../profile/names.ts';
import type {LengthUnit} from '../../profile/types.ts';
import {formatLength} from '../../profile/units/length.ts';

/** How a sentence shows what depends on the reader: lengths in a unit, ids by their plain names. */
export type Say = {
	/** A length, metres, in the reader's unit; to `stepMetres` where given, else as tape readings are shown. */
	readonly length: (metres: number, stepMetres?: number) => string;
	/** The plain name of a channel, sub, seat, plane, or of several joined by `+`; the id where it has none. */
	readonly name: (id: string) => string;
};

/** How the sentences about one profile are said, lengths in `lengthUnit`. */
export function sayIn(profile: Named, lengthUnit: LengthUnit = 'm'): Say {
	return {
		length: (metres, stepMetres) =>
			formatLength(metres, lengthUnit, stepMetres === undefined ? {} : {stepMetres}),
		name: id => nameOf(profile, id),
	};
}
