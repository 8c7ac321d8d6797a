import {channelNames, isLfe} from '../../profile/channels.ts';
import type {LengthUnit, Profile} from '../../profile/types.ts';
import {formatLength} from '../../profile/units/length.ts';
import type {Standing} from '../../study/comparison/sheetData.ts';
import type {PlaceRow} from './content.ts';

/** Everything that stands in the room, named, with the tape distances that put it back after cleaning. */
export function placeRows(profile: Profile, standing: Standing): PlaceRow[] {
	const things = [
		...profile.channels.filter(({id}) => !isLfe(id)).map(({id}) => ({id, name: channelNames[id] as string})),
		...(profile.subs ?? []).map(({id, name}) => ({id, name})),
		...profile.seats.map(({id, name}) => ({id, name})),
		...(standing.positions.has('screen') ? [{id: 'screen', name: 'Screen, its centre'}] : []),
	];
	const unit: LengthUnit = profile.lengthUnit ?? 'm';
	return things.flatMap(({id, name}): PlaceRow[] => {
		const point = standing.positions.get(id);
		const toSeat = standing.seatDistances.get(id);
		if (!point && toSeat === undefined) return [];
		return [
			{
				name,
				acrossFrom: point ? fromNearer(point.x, standing.widthMetres, ['left', 'right'], unit) : '',
				alongFrom: point ? fromNearer(point.y, standing.lengthMetres, ['screen', 'back'], unit) : '',
				height: point ? formatLength(point.z, unit) : '',
				toSeat: toSeat === undefined ? '' : formatLength(toSeat, unit),
			},
		];
	});
}

/** The distance to the nearer of two opposite walls: a short tape errs less. The first wall where the room's size is unknown. */
function fromNearer(
	coordinate: number,
	size: number | undefined,
	[first, second]: readonly [string, string],
	unit: LengthUnit,
): string {
	return size !== undefined && size - coordinate < coordinate
		? `${second} ${formatLength(size - coordinate, unit)}`
		: `${first} ${formatLength(coordinate, unit)}`;
}
