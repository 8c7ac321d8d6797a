import {type Acoustics, acousticsOf} from './acoustics.ts';
import {drawBuild, type RoomRange} from './building.ts';
import {drawGear, type Gear, type KitKind} from './gear.ts';
import type {Box, Point} from './physics/box.ts';
import {openSpace} from './physics/box.ts';
import {drawsOf} from './physics/random.ts';
import {layOut, type Places} from './places.ts';

export type World = {
	readonly seed: string;
	readonly kit: KitKind;
	/** Wanted reverberation time, seconds; 0 without walls. */
	readonly reverberationSeconds: number;
	readonly sizeMetres: Point;
	readonly box: Box;
	readonly places: Places;
	readonly gear: Gear;
	readonly acoustics: Acoustics;
};

/**
One seeded room with its speakers, subs and boxes: the truth that the product does not see.

@param index - Number of the room within its range. The same number gives the same room for every kit.
*/
export function worldOf(range: RoomRange, index: number, kit: KitKind): World {
	const draws = drawsOf(`${range} ${index}`);
	const {box, sizeMetres, reverberationSeconds} = drawBuild(draws.branch('build'), index);
	const places = layOut(sizeMetres, draws.branch('places'));
	const gear = drawGear(places, kit, draws.branch('gear'));
	const heard = kit === 'anechoic' ? openSpace(box.speedOfSound) : box;
	return {
		seed: `${range} ${index} ${kit}`,
		kit,
		reverberationSeconds: kit === 'anechoic' ? 0 : reverberationSeconds,
		sizeMetres,
		box: heard,
		places,
		gear,
		acoustics: acousticsOf(heard, places, gear),
	};
}
