import type {Connection} from '../../../source/profile/types.ts';

/** A finished cable to a speaker, 2.5 mm². */
export const speakerCable = (id: string, runMetres: number, route: string): Connection => ({
	id: `c-${id}`,
	from: `receiver/${id}`,
	to: `${id}/speaker`,
	kind: 'speaker',
	label: id,
	route,
	runMetres,
	areaSquareMillimetres: 2.5,
	polarity: 'checked',
	done: true,
});

/** A finished, screened line cable. */
export const lineCable = (
	id: string,
	from: string,
	to: string,
	runMetres: number,
	route: string,
): Connection => ({
	id,
	from,
	to,
	kind: 'line',
	label: id,
	route,
	runMetres,
	screened: true,
	done: true,
});

/** Ids without blanks; labels keep theirs. */
export const named = (cables: readonly Connection[]): Connection[] =>
	cables.map(cable => ({...cable, id: cable.id.replace(' ', '-')}));
