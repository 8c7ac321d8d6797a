import {finding} from '../../profile/finding.ts';
import {distance, type Vector} from '../survey/vectors.ts';
import {type BassFigures, bassFigures, bassFrequenciesHertz, levelsDb, summed} from './bass.ts';
import {schroederHertz} from './decay.ts';
import type {Decay} from './decayOf.ts';
import type {RoomFinding} from './facts.ts';
import {octaveFractionGrid} from './frequencies.ts';
import {modalResponse, modalWeights, type Response} from './modalResponse.ts';
import {type RoomMode, roomModes} from './modes.ts';
import {type BoundaryDip, boundaryDips, firstReflections, type Reflection} from './reflections.ts';
import {isInside, type RoomShape, shapeFaults, volumeOf} from './shape.ts';

/** Something with a place in the room. */
export type Placed = {readonly id: string; readonly at: Vector};

export type RoomInputs = {
	readonly shape: RoomShape;
	readonly isNearest: boolean;
	readonly decay: Decay;
	readonly speedOfSound: number;
	/** The reference seat first. */
	readonly seats: readonly Placed[];
	readonly subs: readonly Placed[];
	readonly speakers: readonly Placed[];
};

/** How strongly one standing wave is heard at a seat, dB against where it is strongest. */
export type SeatMode = RoomMode & {readonly seatsDb: readonly number[]};

export type SourceAtSeat = {
	readonly source: string;
	readonly seat: string;
	readonly levelsDb: readonly number[];
};

/** Everything computed about a room. */
export type RoomStudy = {
	readonly volumeCubicMetres: number;
	readonly decay: Decay;
	readonly schroederHertz: number;
	/** Up to 200 Hz, the one at 0 Hz left out. */
	readonly modes: readonly SeatMode[];
	readonly frequenciesHertz: readonly number[];
	/** Every sub and speaker at every seat, as if it were alone and flat; dB against its free field at 1 m. */
	readonly responses: readonly SourceAtSeat[];
	/** All subs together, equally loud and arriving together at the reference seat. */
	readonly together?: {readonly seatsDb: ReadonlyArray<readonly number[]>; readonly figures: BassFigures};
	/** From every speaker to the reference seat. */
	readonly reflections: ReadonlyArray<{
		readonly speaker: string;
		readonly directMetres: number;
		readonly reflections: readonly Reflection[];
		readonly dips: readonly BoundaryDip[];
	}>;
	readonly findings: readonly RoomFinding[];
};

/** Frequencies of the drawn responses: 15 to 200 Hz in 24ths of an octave. */
export const drawnFrequenciesHertz: readonly number[] = octaveFractionGrid(15, 200, 24);
/** Modes are summed up to here, hertz: what lies higher adds smoothly below 200 Hz. */
const summedToHertz = 300;
const listedToHertz = 200;
/** Sizes are seldom known better than this: the share by which frequencies may be off. */
const sizeShare = 0.015;
/** A dip by surfaces that is worth a word, dB, and where a crossover to the subs does not hide it, hertz. */
const dip = {leastDb: -8, fromHertz: 60, toHertz: 300} as const;
/** A seat hears a wave this far below its strongest place as a hole, dB. */
const nullDb = -18;
/** A hole in the sum of all subs that is worth a word, dB below the mean. */
const holeDb = 10;

const strongestOf = (mode: RoomMode, volume: number, isBox: boolean): number => {
	// Of a box in closed form: every cosine doubles the mean square. Other rooms come near their tangential waves.
	const waves = isBox ? mode.order.filter(order => order !== 0).length : 2;
	return Math.sqrt(2 ** waves / volume);
};

/**
A room's standing waves, the response from every sub and speaker to every seat, its boundary dips and first reflections.

Places outside the room are left out and named. Surfaces are taken as rigid and the decay as one for all waves; doors,
furniture and walls that give shift frequencies by 2 to 4 %.
*/
export function studyRoom(inputs: RoomInputs): RoomStudy {
	const {shape, isNearest, decay, speedOfSound} = inputs;
	const findings: RoomFinding[] = shapeFaults(shape).map(fault =>
		finding('problem', 'room-size-impossible', [], fault),
	);
	if (findings.length > 0) return nothingBeyond(findings, decay);
	const inside = (placed: readonly Placed[]) => {
		const outside = placed.filter(({at}) => !isInside(shape, at));
		findings.push(...outside.map(({id}) => finding('problem', 'room-place-outside', [id])));
		return placed.filter(one => !outside.includes(one));
	};
	const [seats, subs, speakers] = [inside(inputs.seats), inside(inputs.subs), inside(inputs.speakers)];
	if (isNearest && shape.kind === 'corner')
		findings.push(finding('doubt', 'room-nearest-shape', [], {heightMetres: shape.heightMetres}));
	if (decay.from === 'estimated')
		findings.push(finding('note', 'room-decay-estimated', [], {seconds: decay.seconds}));
	if (seats.length === 0) findings.push(finding('advice', 'room-nothing-placed', [], {what: 'seats'}));
	if (subs.length === 0) findings.push(finding('advice', 'room-nothing-placed', [], {what: 'subs'}));

	const found = roomModes(shape, summedToHertz, speedOfSound);
	const volume = volumeOf(shape);
	const shapesAt = new Map([...seats, ...subs, ...speakers].map(({id, at}) => [id, found.at(at)!]));
	const listed = found.modes
		.map((mode, n) => ({mode, n}))
		.filter(({mode}) => mode.frequencyHertz > 0 && mode.frequencyHertz <= listedToHertz);
	const modes = listed.map(({mode, n}): SeatMode => {
		const strongest = strongestOf(mode, volume, shape.kind === 'box');
		return {
			...mode,
			seatsDb: seats.map(
				({id}) => 20 * Math.log10(Math.max(1e-4, Math.abs(shapesAt.get(id)![n]!) / strongest)),
			),
		};
	});

	const drawn = modalWeights(found, drawnFrequenciesHertz, decay.seconds, speedOfSound);
	const responseOf = (source: Placed, seat: Placed): Response =>
		modalResponse(drawn, shapesAt.get(source.id)!, shapesAt.get(seat.id)!);
	const responses = [...subs, ...speakers].flatMap(source =>
		seats.map(seat => ({source: source.id, seat: seat.id, levelsDb: levelsDb(responseOf(source, seat))})),
	);
	const together =
		subs.length > 0 && seats.length > 0 ? togetherOf(subs, seats, speedOfSound, responseOf) : undefined;
	const reflections =
		seats.length === 0 ? [] : speakers.map(speaker => reflectionsOf(shape, speaker, seats[0]!, speedOfSound));
	findings.push(...modeFindings(modes, seats), ...bassFindings(together, seats));
	for (const {speaker, dips} of reflections) {
		const [deepest] = dips;
		if (deepest) findings.push(finding('note', 'speaker-boundary-dip', [speaker], deepest));
	}

	return {
		volumeCubicMetres: volume,
		decay,
		schroederHertz: schroederHertz(volume, decay.seconds),
		modes,
		frequenciesHertz: drawnFrequenciesHertz,
		responses,
		...(together && {together}),
		reflections,
		findings,
	};
}

function nothingBeyond(findings: readonly RoomFinding[], decay: Decay): RoomStudy {
	return {
		volumeCubicMetres: 0,
		decay,
		schroederHertz: 0,
		modes: [],
		frequenciesHertz: drawnFrequenciesHertz,
		responses: [],
		reflections: [],
		findings,
	};
}

function togetherOf(
	subs: readonly Placed[],
	seats: readonly Placed[],
	speedOfSound: number,
	responseOf: (source: Placed, seat: Placed) => Response,
): NonNullable<RoomStudy['together']> {
	const ways = subs.map(({at}) => distance(at, seats[0]!.at));
	const delays = ways.map(way => (1000 * (Math.max(...ways) - way)) / speedOfSound);
	const seatsDb = seats.map(seat =>
		levelsDb(
			summed(
				drawnFrequenciesHertz,
				subs.map((sub, i) => ({response: responseOf(sub, seat), delayMs: delays[i]!})),
			),
		),
	);
	const isJudged = (hertz: number) =>
		hertz >= bassFrequenciesHertz[0]! && hertz <= bassFrequenciesHertz.at(-1)! + 1e-9;
	const picked = drawnFrequenciesHertz.flatMap((hertz, f) => (isJudged(hertz) ? [f] : []));
	return {
		seatsDb,
		figures: bassFigures(
			picked.map(f => drawnFrequenciesHertz[f]!),
			seatsDb.map(levels => picked.map(f => levels[f]!)),
		),
	};
}

function reflectionsOf(
	shape: RoomShape,
	speaker: Placed,
	seat: Placed,
	speedOfSound: number,
): RoomStudy['reflections'][number] {
	const reflections = firstReflections(shape, speaker.at, seat.at, speedOfSound);
	return {
		speaker: speaker.id,
		directMetres: distance(speaker.at, seat.at),
		reflections,
		dips: boundaryDips(reflections, dip.fromHertz, dip.toHertz, dip.leastDb),
	};
}

/** Single standing waves are heard one by one below this; above, too many overlap. Hertz; common practice, no source. */
const singleToHertz = 120;

function modeFindings(modes: readonly SeatMode[], seats: readonly Placed[]): RoomFinding[] {
	const single = modes.filter(mode => mode.frequencyHertz <= singleToHertz);
	const found: RoomFinding[] = [];
	const axial = single.filter(mode => mode.kind === 'axial' || mode.kind === undefined);
	for (const [i, mode] of axial.entries()) {
		const next = axial[i + 1];
		if (next && next.frequencyHertz - mode.frequencyHertz < sizeShare * mode.frequencyHertz)
			found.push(
				finding('note', 'room-modes-together', [], {
					frequenciesHertz: [mode.frequencyHertz, next.frequencyHertz],
				}),
			);
	}

	for (const [s, seat] of seats.entries()) {
		const [first] = axial.filter(mode => mode.seatsDb[s]! < nullDb);
		if (first)
			found.push(
				finding('note', 'seat-in-null', [seat.id], {
					frequencyHertz: first.frequencyHertz,
					levelDb: first.seatsDb[s]!,
				}),
			);
	}

	return found;
}

function bassFindings(together: RoomStudy['together'], seats: readonly Placed[]): RoomFinding[] {
	if (!together || together.figures.hole.depthDb < holeDb) return [];
	return [finding('advice', 'seat-hole', [seats[0]!.id], together.figures.hole)];
}
