/**
Rooms to try the product's advice in: image sources, speakers with boxes, a receiver, a processor, a meter, a tape. All of
it is the tests' own; of the product only the types of its file are taken, and what `product.ts` hands over.

	const world = worldOf('building', 12, 'hidden');         // range, number, kit: known | hidden | anechoic
	world.sizeMetres, world.reverberationSeconds             // 0.2 … 0.6 s in turn with the number
	world.places.at.FL, world.places.seat                    // true points, metres
	world.gear.subs.sub1.unstatedLatencyMs                   // what the profile does not say

	const boxes = boxesOf(settingsSet);                      // a set typed in as it stands; boxesOf({channels: {}}) is zero
	const playing = {into: ['FC'], on: ['FC', 'sub1', 'sub2'], addedDelayMs: 4.2} as const;
	trueLevel(world, boxes, playing, {kind: 'tone', hertz: 80})                       // dB, C-weighted, at the ear
	trueLevel(world, boxes, playing, {kind: 'pink', fromHertz: 40, toHertz: 160}, besideSeat(world, 0.12, draws))
	readMeter(world, boxes, playing, signal, draws, point)   // with the meter's scatter, to 0.1 dB
	readTape(heldLength(world, 'FL', 'seat1', holding, draws), draws)

	soundOf(world, boxes, playing, 'FC', point, [63, 80, 100])   // complex, of everything that is on
	arriving(world, boxes, 'FC', 'sub1', point)                  // complex, of one source, at bassHertz
	world.acoustics.at('FL', point, [63, 80])                    // complex, room and box only, 1 at 1 m in free field
	impulseResponse(world.box, {at}, point, 48_000, shape)       // for recordings

`into` is the channel the signal goes into (several: independent noises at once); `on` is what can sound. A main channel's
low end goes to the subs that are on through the crossover of its own setting. Noise bands end below 500 Hz or begin above
300 Hz. Frequencies 15 to 500 Hz for complex responses.

Draws come from `drawsOf(seed)`; `draws.branch('name')` gives draws that nothing else shifts. Rooms of the range `fresh` are
for reporting alone: build on `building`.
*/

export {type BoxesState, boxesOf} from './boxes.ts';
export type {RoomRange} from './building.ts';
export type {KitKind} from './gear.ts';
export {
	besideSeat,
	type Holding,
	heldExactly,
	heldLength,
	readMeter,
	readTape,
	trueLevel,
} from './instruments.ts';
export {impulseResponse} from './physics/impulse.ts';
export {type Draws, drawsOf} from './physics/random.ts';
export {mainIds, type SourceId, subIds} from './places.ts';
export {bassHertz} from './roomSound.ts';
export {arriving, noiseLevel, type Playing, soundOf, toneLevel} from './sound.ts';
export {type World, worldOf} from './world.ts';
