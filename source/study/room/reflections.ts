import {add, distance, dot, scale, subtract, type Vector} from '../survey/vectors.ts';
import {isInside, type RoomShape} from './shape.ts';
import {type RoomSurface, surfacesOf} from './surfaces.ts';

/** One first reflection on its way from a source to a seat. */
export type Reflection = {
	readonly plane: RoomSurface['plane'];
	readonly piece: number;
	/** Where the sound touches the surface, metres in the room's frame: where an absorber would hang. */
	readonly at: Vector;
	/** How much longer than the direct way, metres. */
	readonly detourMetres: number;
	/** How much later than the direct sound, milliseconds. */
	readonly delayMs: number;
	/** Level against the direct sound by distance alone, dB; what the surface takes off comes on top. */
	readonly levelDb: number;
	/** First frequency at which it arrives opposed to the direct sound: c / (2·detour), hertz. */
	readonly dipHertz: number;
};

/** Whether the straight way between two points of the room stays in it. A room without inner corners always says yes. */
function isFree(shape: RoomShape, from: Vector, to: Vector): boolean {
	if (shape.kind === 'box') return true;
	// Every few centimetres: a corner that is cut by less does not shade sound of these wavelengths.
	const steps = Math.ceil(distance(from, to) / 0.05);
	for (let i = 1; i < steps; i++) {
		if (!isInside(shape, add(from, scale(subtract(to, from), i / steps)))) return false;
	}

	return true;
}

/**
First reflections from a source to a receiver, the loudest first: images of the source in every surface, exact for
sloped ones too.

@param source - Inside the room, metres.
@param receiver - Inside the room, metres.
@param speedOfSound - Metres per second.
@see Allen and Berkley, Journal of the Acoustical Society of America 65 (1979), 943: images of first order.
*/
export function firstReflections(
	shape: RoomShape,
	source: Vector,
	receiver: Vector,
	speedOfSound: number,
): Reflection[] {
	const direct = distance(source, receiver);
	const found: Reflection[] = [];
	for (const {plane, piece, corners, normal} of surfacesOf(shape)) {
		const height = dot(subtract(source, corners[0]!), normal);
		const receiverHeight = dot(subtract(receiver, corners[0]!), normal);
		// A source or a seat on the surface itself sees no reflection there, one behind it no surface.
		if (!(height > 1e-3 && receiverHeight > 1e-3)) continue;
		const image = subtract(source, scale(normal, 2 * height));
		const share = height / (height + receiverHeight);
		const at = add(image, scale(subtract(receiver, image), share));
		// A hair inside, so that the point is held against the surface's own extent.
		if (!isInside(shape, add(at, scale(normal, 1e-5)))) continue;
		if (!(isFree(shape, source, at) && isFree(shape, at, receiver))) continue;
		const way = distance(image, receiver);
		const detourMetres = way - direct;
		found.push({
			plane,
			piece,
			at,
			detourMetres,
			delayMs: (1000 * detourMetres) / speedOfSound,
			levelDb: 20 * Math.log10(direct / way),
			dipHertz: speedOfSound / (2 * detourMetres),
		});
	}

	return found.sort((one, other) => other.levelDb - one.levelDb);
}

/** What the first reflections together do to the direct sound at one frequency. */
export type BoundaryDip = {
	readonly frequencyHertz: number;
	/** Level against the direct sound alone, dB, with surfaces that take nothing off. */
	readonly levelDb: number;
	/** The surface whose reflection opposes the direct sound most there. */
	readonly plane: RoomSurface['plane'];
};

/**
The dips that the first reflections make together below a frequency, deepest first. Surfaces are taken as rigid and
later reflections left out, so that a real dip is shallower.

@param reflections - Of one source at one seat.
@param leastDb - How far below the direct sound counts as a dip, dB (below 0).
*/
export function boundaryDips(
	reflections: readonly Reflection[],
	fromHertz: number,
	toHertz: number,
	leastDb: number,
): BoundaryDip[] {
	const levelAt = (hertz: number): number => {
		let real = 1;
		let imaginary = 0;
		for (const {delayMs, levelDb} of reflections) {
			const phase = (2 * Math.PI * hertz * delayMs) / 1000;
			real += 10 ** (levelDb / 20) * Math.cos(phase);
			imaginary -= 10 ** (levelDb / 20) * Math.sin(phase);
		}

		return 20 * Math.log10(Math.hypot(real, imaginary));
	};
	// 1/48 octave: a dip is a quarter of an octave wide.
	const count = Math.ceil(48 * Math.log2(toHertz / fromHertz));
	const grid = Array.from({length: count + 1}, (_, i) => fromHertz * 2 ** (i / 48));
	const levels = grid.map(hertz => levelAt(hertz));
	const dips: BoundaryDip[] = [];
	for (let i = 1; i + 1 < grid.length; i++) {
		if (!(levels[i]! <= leastDb && levels[i]! <= levels[i - 1]! && levels[i]! < levels[i + 1]!)) continue;
		const against = reflections
			.map(({plane, delayMs, levelDb}) => ({
				plane,
				part: 10 ** (levelDb / 20) * Math.cos((2 * Math.PI * grid[i]! * delayMs) / 1000),
			}))
			.sort((one, other) => one.part - other.part)[0]!;
		dips.push({frequencyHertz: grid[i]!, levelDb: levels[i]!, plane: against.plane});
	}

	return dips.sort((one, other) => one.levelDb - other.levelDb);
}
