import {type Acoustics, acousticsOf} from './acoustics.ts';
import {boxesOf} from './boxes.ts';
import {drawBuild, type RoomRange} from './building.ts';
import {drawGear, type Gear, type KitKind} from './gear.ts';
import type {Box, Point} from './physics/box.ts';
import {openSpace} from './physics/box.ts';
import {type Draws, drawsOf} from './physics/random.ts';
import {layOut, mainIds, type Places, subIds} from './places.ts';
import {type RoomSound, roomSoundOf} from './roomSound.ts';
import {noiseLevel} from './sound.ts';

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
	/** Where master and the subs' knobs stand before the first reading: mains read about 75 dB, each sub a little less. */
	readonly knobs: {readonly mainsDb: number; readonly subsDb: number};
};

/** Walls and places of one number, for any kit. */
export type BareRoom = {
	readonly seed: string;
	readonly draws: Draws;
	readonly build: ReturnType<typeof drawBuild>;
	readonly places: Places;
	readonly sound: RoomSound;
};

/** @param index - Number of the room within its range. */
export function bareRoom(range: RoomRange, index: number): BareRoom {
	const seed = `${range} ${index}`;
	const draws = drawsOf(seed);
	const build = drawBuild(draws.branch('build'), index);
	const places = layOut(build.sizeMetres, draws.branch('places'));
	return {seed, draws, build, places, sound: roomSoundOf(build.box, places)};
}

/** A room with its speakers, subs and boxes: the truth that the product does not see. */
export function worldIn({seed, draws, build, places, sound}: BareRoom, kit: KitKind): World {
	const {box, sizeMetres, reverberationSeconds} = build;
	const isOpen = kit === 'anechoic';
	const heard = isOpen ? openSpace(box.speedOfSound) : box;
	const gear = drawGear(places, kit, draws.branch('gear'));
	const world = {
		seed: `${seed} ${kit}`,
		kit,
		reverberationSeconds: isOpen ? 0 : reverberationSeconds,
		sizeMetres,
		box: heard,
		places,
		gear,
		acoustics: acousticsOf(isOpen ? roomSoundOf(heard, places) : sound, gear),
		knobs: {mainsDb: 0, subsDb: 0},
	};
	return {...world, knobs: turnedTo(world, 75, 72)};
}

/** One seeded room. The same number gives the same room for every kit. */
export const worldOf = (range: RoomRange, index: number, kit: KitKind): World =>
	worldIn(bareRoom(range, index), kit);

/** Knobs with which mains and single subs read so much on average with nothing else set. */
function turnedTo(world: World, mainsDb: number, subsDb: number): World['knobs'] {
	const mean = (levels: readonly number[]) => levels.reduce((sum, level) => sum + level, 0) / levels.length;
	const zero = boxesOf({channels: {}});
	const {seat} = world.places;
	return {
		mainsDb:
			mainsDb -
			mean(mainIds.map(id => noiseLevel(world, zero, {into: [id], on: [id]}, [355, 2818], seat, 'Z'))),
		subsDb:
			subsDb -
			mean(subIds.map(id => noiseLevel(world, zero, {into: ['LFE1'], on: [id]}, [28.2, 112.2], seat, 'Z'))),
	};
}
