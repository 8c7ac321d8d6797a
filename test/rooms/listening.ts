import {type PlayedRound, playedRound} from '../../source/study/hearing/round.ts';
import {ownResponse} from './acoustics.ts';
import type {BoxesState} from './boxes.ts';
import {type Box, distanceBetween, type Point, type Source} from './physics/box.ts';
import {impulseResponse} from './physics/impulse.ts';
import type {Draws} from './physics/random.ts';
import {product, type Spectrum} from './physics/spectrum.ts';
import {octaveBlend} from './physics/transfer.ts';
import {type MainId, mainIds, type SourceId, subIds} from './places.ts';
import {electronics} from './sound.ts';
import type {World} from './world.ts';

export const playerRate = 48_000;

/** Places of a file for the room's channels: what stands overhead is plugged in where a file's backs would be. */
const placeOf: Readonly<Record<MainId | 'LFE1', string>> = {
	FL: 'FL',
	FR: 'FR',
	FC: 'FC',
	LS: 'SiL',
	RS: 'SiR',
	TpSiL: 'BL',
	TpSiR: 'BR',
	LFE1: 'LFE1',
};

/**
- `plain`: radiates to all sides, one way or two, the tweeter turned by its crossover in half of the two-ways.
- `dipole`: its null a little beside the seat.
- `upward`: stands where it is but fires at the ceiling; to the side it is 14 dB down above 700 Hz (assumed).
*/
export type SpeakerKind = 'plain' | 'dipole' | 'upward';

/** What is true of a channel's line at the seat. */
export type LineTruth = {
	readonly id: MainId | 'LFE1';
	/** As the round names it. */
	readonly channel: string;
	readonly kind: SpeakerKind;
	readonly hasTurnedTweeter: boolean;
	/** From the player to the seat along the shortest way, ms; of a sub the nearest one's. */
	readonly arrivalMs: number;
	readonly sign: 1 | -1;
	/** All that sounds when the channel plays, at 48 kHz; sample 0 is the moment of playing. */
	readonly impulse: Float64Array;
};

export const listeningRound = (): PlayedRound => playedRound('all', Object.values(placeOf));

/** A processor's settings as somebody may have left them: delays, a crossover, here and there a turned channel. */
export function drawBoxes(draws: Draws): BoxesState {
	const box = (crossoverHertz: number | undefined) => ({
		trimDb: draws.uniform(-3, 3),
		delayMs: draws.uniform(0, 6),
		crossoverHertz,
		isInverted: draws.chance(0.3),
	});
	return {
		masterDb: 0,
		lfeLowPassHertz: 120,
		channels: {...Object.fromEntries(mainIds.map(id => [id, box(80)])), LFE1: box(undefined)},
		outputs: {},
	};
}

/** Every line of a room at its seat, with what is true of it. Surrounds may be dipoles, speakers overhead upward-firing. */
export function linesOf(world: World, boxes: BoxesState, draws: Draws): LineTruth[] {
	const surrounds: SpeakerKind = draws.chance(0.4) ? 'dipole' : 'plain';
	const tops: SpeakerKind = draws.chance(0.4) ? 'upward' : 'plain';
	const kindOf = (id: MainId): SpeakerKind =>
		id === 'LS' || id === 'RS' ? surrounds : id.startsWith('Tp') ? tops : 'plain';
	const subs = (into: MainId | 'LFE1') =>
		summed(subIds.map(sub => throughRoom(world, boxes, into, sub, {at: world.places.at[sub]})));
	// With one crossover all mains send the same to the subs.
	const [behindMains, behindLfe] = [subs('FL'), subs('LFE1')];
	return [...mainIds, 'LFE1' as const].map(id =>
		id === 'LFE1'
			? lineTruth(world, boxes, id, 'plain', behindLfe)
			: lineTruth(world, boxes, id, kindOf(id), behindMains, draws.branch(id)),
	);
}

function lineTruth(
	world: World,
	boxes: BoxesState,
	id: MainId | 'LFE1',
	kind: SpeakerKind,
	subs: Float64Array,
	draws?: Draws,
): LineTruth {
	const {places, box} = world;
	const flightMs = (at: Point) => (1000 * distanceBetween(at, places.seat)) / box.speedOfSound;
	if (id === 'LFE1' || !draws)
		return {
			id,
			channel: placeOf[id],
			kind,
			hasTurnedTweeter: false,
			arrivalMs: Math.min(...subIds.map(sub => flightMs(places.at[sub]))),
			sign: 1,
			impulse: subs,
		};
	const at = kind === 'upward' ? besideScreen(places.at[id], world) : places.at[id];
	const source: Source = kind === 'dipole' ? {at, dipoleAxis: nullTowards(at, places.seat, draws)} : {at};
	const parts = [throughRoom(world, boxes, id, id, source, kind === 'upward' ? sideways : undefined)];
	if (kind === 'upward') parts.push(overCeiling(world, boxes, id, at));
	const {delayMs, isInverted} = boxes.channels[id]!;
	return {
		id,
		channel: placeOf[id],
		kind,
		hasTurnedTweeter: world.gear.mains[id].twoWay?.tweeterTurned === true,
		arrivalMs: flightMs(at) + delayMs,
		sign: isInverted ? -1 : 1,
		impulse: summed([...parts, subs]),
	};
}

/** An upward-firing speaker stands on a front speaker. */
function besideScreen(top: Point, {places}: World): Point {
	const front = top[0] < places.seat[0] ? places.at.FL : places.at.FR;
	return [front[0], front[1], front[2] + 0.15];
}

/** An axis 70 to 85 degrees off the way to the seat, in the horizontal plane, its front on the seat's side. */
function nullTowards(at: Point, seat: Point, draws: Draws): Point {
	const angle =
		Math.atan2(seat[1] - at[1], seat[0] - at[0]) +
		((draws.chance(0.5) ? 1 : -1) * (draws.uniform(70, 85) * Math.PI)) / 180;
	return [Math.cos(angle), Math.sin(angle), 0];
}

const sideGain = 10 ** (-14 / 20);
const sideHertz = 700;
/** To the side of an upward-firing speaker, and what is missing there: (1 + g·jx)/(1 + jx) and the rest to 1. */
function shelf(frequencies: Float64Array, isUp: boolean): Spectrum {
	const re = new Float64Array(frequencies.length);
	const im = new Float64Array(frequencies.length);
	for (const [index, hertz] of frequencies.entries()) {
		const x = hertz / sideHertz;
		const [a, b] = isUp ? [0, (1 - sideGain) * x] : [1, sideGain * x];
		re[index] = (a + b * x) / (1 + x * x);
		im[index] = (b - a * x) / (1 + x * x);
	}

	return {re, im};
}

const sideways = (frequencies: Float64Array) => shelf(frequencies, false);

/** The beam of an upward-firing speaker: by the ceiling to the seat and no further. */
function overCeiling(world: World, boxes: BoxesState, id: MainId, at: Point): Float64Array {
	const {box, sizeMetres} = world;
	const mirrored: Point = [at[0], at[1], 2 * sizeMetres[2] - at[2]];
	const open: Box = {...box, reflections: undefined} as unknown as Box;
	const bounce = (frequencies: Float64Array) => {
		const spectrum = shelf(frequencies, true);
		for (const [index, hertz] of frequencies.entries()) {
			const {below, above, share} = octaveBlend(Math.max(1, hertz));
			const wall = (octave: number) => box.reflections?.[octave]?.[5] ?? 0;
			const factor = (1 - share) * wall(below) + share * wall(above);
			spectrum.re[index]! *= factor;
			spectrum.im[index]! *= factor;
		}

		return spectrum;
	};
	return throughRoom({...world, box: open}, boxes, id, id, {at: mirrored}, bounce);
}

/** Electronics, box and room from a channel to the seat. */
function throughRoom(
	world: World,
	boxes: BoxesState,
	into: MainId | 'LFE1',
	id: SourceId,
	source: Source,
	further?: (frequencies: Float64Array) => Spectrum,
): Float64Array {
	return impulseResponse(world.box, source, world.places.seat, playerRate, frequencies => {
		const shape = product(
			ownResponse(world.gear, id, frequencies),
			electronics(world, boxes, into, id, frequencies)!,
		);
		return further ? product(shape, further(frequencies)) : shape;
	});
}

function summed(parts: readonly Float64Array[]): Float64Array {
	const sum = new Float64Array(Math.max(...parts.map(({length}) => length)));
	for (const part of parts) for (const [index, value] of part.entries()) sum[index]! += value;
	return sum;
}
