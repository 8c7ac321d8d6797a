import {formatNumber} from '../../profile/units/decimalText.ts';
import type {RoomFacts} from '../../study/room/facts.ts';
import {db} from './figures.ts';
import type {Say} from './say.ts';
import type {Sentences} from './sentences.ts';

const inHertz = (value: number) => `${formatNumber(value, value < 100 ? 1 : 0)} Hz`;
const sizes = {
	width: 'the width',
	length: 'the length',
	height: 'the height',
	places: 'a place of the ceiling',
	missingWidth: 'the width of the missing corner',
	missingLength: 'the length of the missing corner',
} as const;

function sizeNames(missing: RoomFacts['room-size-missing']['missing']): string {
	const names = missing.map(size => sizes[size]);
	return names.length === 1 ? names[0]! : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

export const roomSentences: Sentences<RoomFacts> = {
	'room-size-missing': ({missing}) => [
		`${sizeNames(missing)} of the room ${missing.length === 1 ? 'is' : 'are'} not known`,
		'Type them in, or take them by tape from wall to wall and from floor to ceiling.',
	],
	'room-size-impossible': ({size, metres, leastMetres, mostMetres}, say: Say) => [
		`${sizes[size]} is ${say.length(metres)}`,
		`Expected between ${say.length(leastMetres)} and ${say.length(mostMetres)}: look at the unit and type it again.`,
	],
	'room-nearest-shape': ({heightMetres}, say) => [
		'a ceiling that changes above a floor without one corner is not computed exactly',
		`Taken as flat at its mean height, ${say.length(heightMetres)}: trust frequencies to some 5 %.`,
	],
	'room-decay-estimated': ({seconds}) => [
		`the decay is estimated from the surfaces: ${formatNumber(seconds, 2)} s`,
		'Peaks and holes are as deep as that guess; their places do not depend on it.',
	],
	'room-nothing-placed': ({what}) => [
		what === 'subs' ? 'no subwoofer has a known place' : 'no seat has a known place',
		'Take its distances from two walls and the floor.',
	],
	'room-place-outside': () => ['stands outside the walls', 'Check its distances, or the size of the room.'],
	'room-modes-together': ({frequenciesHertz: [first, second]}) => [
		`standing waves at ${inHertz(first!)} and ${inHertz(second!)} fall on one frequency`,
		'There the room rings twice; keep a subwoofer out of the corners if it booms.',
	],
	'seat-in-null': ({frequencyHertz, levelDb}) => [
		`hears next to nothing of the standing wave at ${inHertz(frequencyHertz)} (${db(levelDb, 0)})`,
		'No setting mends that: a seat moved by a tenth of the room would.',
	],
	'seat-hole': ({frequencyHertz, depthDb}) => [
		`all subs together leave a hole of ${db(depthDb, 0)} at ${inHertz(frequencyHertz)}`,
		'Another place for a subwoofer or the seat fills it; turning up does not.',
	],
	'speaker-boundary-dip': ({frequencyHertz, levelDb, plane}, say) => [
		`dips by up to ${db(-levelDb, 0)} at ${inHertz(frequencyHertz)}, most by the ${say.name(plane)}`,
		'Counted with hard surfaces and first reflections alone: a real dip is shallower.',
	],
	'model-beside-recording': ({distanceDb, fromHertz, toHertz}) => [
		`computed and recorded differ by ${db(distanceDb)} on average from ${inHertz(fromHertz)} to ${inHertz(toHertz)}`,
	],
};
