import type {LengthUnit} from '../../profile/types.ts';
import {readLength} from '../../profile/units/length.ts';
import type {NetworkResult} from '../survey/result.ts';
import {add, type Vector} from '../survey/vectors.ts';

/** A thing and how far it is moved, metres in the room's frame. */
export type Move = {readonly id: string; readonly by: Vector};

/** Directions as someone at the seat facing the screen has them. */
const ways: Readonly<Record<string, Vector>> = {
	left: [-1, 0, 0],
	right: [1, 0, 0],
	forward: [0, -1, 0],
	back: [0, 1, 0],
	up: [0, 0, 1],
	down: [0, 0, -1],
};
const form = 'Write NAME=left:LENGTH (or right, forward, back, up, down; several with commas) or NAME=X,Y,Z';

export type MoveReading =
	| {readonly ok: true; readonly moves: readonly Move[]}
	| {readonly ok: false; readonly why: string};

/** A signed length such as "+0.10" or "−4in", in metres. */
function signedLength(text: string, unit: LengthUnit): number | undefined {
	const sign = /^[-−]/.test(text) ? -1 : 1;
	const read = readLength(text.replace(/^[-−+]/, ''), unit);
	return read.kind === 'ok' ? sign * read.metres : undefined;
}

function readMove(text: string, unit: LengthUnit): Move | string {
	const [id, steps, ...rest] = text.split('=');
	if (!id || !steps || rest.length > 0) return `“${text}” is no move. ${form}.`;
	const parts = steps.split(',');
	if (!steps.includes(':')) {
		const by = parts.map(part => signedLength(part.trim(), unit));
		if (by.length !== 3 || by.includes(undefined)) {
			return `“${steps}” is not three lengths, with a point as decimal sign. ${form}.`;
		}

		return {id, by: by as unknown as Vector};
	}

	let by: Vector = [0, 0, 0];
	for (const part of parts) {
		const [way, size] = part.trim().split(':');
		const direction = way && Object.hasOwn(ways, way) ? ways[way] : undefined;
		const metres = size === undefined ? undefined : signedLength(size, unit);
		if (!direction || metres === undefined) return `“${part}” is no direction with a length. ${form}.`;
		by = add(by, [direction[0] * metres, direction[1] * metres, direction[2] * metres]);
	}

	return {id, by};
}

/**
Reads moves such as `FL=left:0.11`, `FL=left:4in,up:2in` or `FL=+0.10,0,0` (right, back and up are positive).

@param unit - Unit of bare numbers.
*/
export function readMoves(texts: readonly string[], unit: LengthUnit): MoveReading {
	const read = texts.map(text => readMove(text, unit));
	const wrong = read.filter(one => typeof one === 'string');
	if (wrong.length > 0) return {ok: false, why: wrong.join(' ')};
	return {ok: true, moves: read as Move[]};
}

/**
The network with things moved, everything else as measured. Uncertainties stay those of the places before.

@throws {RangeError} If a name is not in the network, its place is not known, or it is marked as fixed.
*/
export function moved(result: NetworkResult, moves: readonly Move[]): NetworkResult {
	for (const {id} of moves) {
		const point = result.points.find(one => one.id === id);
		if (!point) {
			const names = result.points.map(one => one.id).join(', ');
			throw new RangeError(`${id} cannot be moved: there is no such thing here. Expected one of ${names}.`);
		}

		if (point.isFixed)
			throw new RangeError(`${point.label} cannot be moved: the profile says that it is fixed.`);
		if (point.status === 'undetermined' || point.status === 'unmeasured') {
			throw new RangeError(`${point.label} cannot be moved: its place is not measured yet.`);
		}
	}

	const points = result.points.map(point => ({
		...point,
		at: moves.filter(({id}) => id === point.id).reduce((at, {by}) => add(at, by), point.at),
	}));
	return {...result, points};
}
