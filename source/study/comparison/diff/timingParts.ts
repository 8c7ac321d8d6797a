import {partsOf, productParts, type RoundingSide, roundingOf} from './parts.ts';
import type {Part} from './profileDiff.ts';

/** Everything that one timing setting of one profile was computed from. */
export type TimingSide = RoundingSide & {
	/** As it stands in the box, in milliseconds or metres after the kind of entry. */
	readonly dialled: number;
	readonly kind: 'delay' | 'distance';
	readonly arrivalMs: number;
	/** Absent where the arrival is that of several subs at once. */
	readonly distanceMetres: number | undefined;
	/** Whether it delays subs, which the blend moves on purpose. */
	readonly isBass?: boolean;
	readonly speedOfSound: number;
	/** The receiver's own constant, m/s; used for entries of distance. */
	readonly receiverSpeed: number;
	/** What exact timing and arrival of all channels of the box have in common: see `timingOffset`. */
	readonly sharedOffset: number;
};

/** Exact value without the channel's own arrival: max t for delays, 0 for distances, unless the solver shifts them. */
export function timingOffset(
	side: Pick<TimingSide, 'kind' | 'exact' | 'arrivalMs' | 'receiverSpeed'>,
): number {
	return side.kind === 'delay'
		? side.exact + side.arrivalMs
		: side.exact - (side.arrivalMs * side.receiverSpeed) / 1000;
}

/** A distance entry as the delay that it stands for, so that the two kinds of entry can be held against each other. */
export function asDelay(side: TimingSide): TimingSide {
	if (side.kind === 'delay') return side;
	const scale = -1000 / side.receiverSpeed;
	return {
		...side,
		kind: 'delay',
		dialled: side.dialled * scale,
		exact: side.exact * scale,
		stepped: side.stepped * scale,
		sharedShift: side.sharedShift * scale,
		sharedOffset: side.sharedOffset * scale,
		step: side.step * -scale,
		minimum: side.maximum * scale,
		maximum: side.minimum * scale,
	};
}

/**
Why a delay or a distance entry is another than before, split exactly.

Both sides must be of one kind (`asDelay` makes them so). The flight is d/c, the arrival flight plus latency, the exact
value the arrival times −1 (delay) or times the receiver's constant (distance) plus an offset that all channels share.

@returns Parts in milliseconds or metres; they add up to `after.dialled − before.dialled`.
*/
export function timingParts(before: TimingSide, after: TimingSide): Part[] {
	const factorOf = (side: TimingSide) => (side.kind === 'delay' ? -1 : side.receiverSpeed / 1000);
	const [fromArrival, fromFactor] = productParts(
		[before.arrivalMs, factorOf(before)],
		[after.arrivalMs, factorOf(after)],
	);
	const meanFactor = (factorOf(before) + factorOf(after)) / 2;
	const own = (side: TimingSide) => timingOffset(side) - side.sharedOffset;
	const roundingBefore = roundingOf(before);
	const roundingAfter = roundingOf(after);

	const arrival: Array<readonly ['distance' | 'speed of sound' | 'latency' | 'arrival', number]> = [];
	if (before.distanceMetres === undefined || after.distanceMetres === undefined)
		arrival.push(['arrival', fromArrival]);
	else {
		const slownessOf = (side: TimingSide) => 1000 / side.speedOfSound;
		const [fromDistance, fromSpeed] = productParts(
			[before.distanceMetres, slownessOf(before)],
			[after.distanceMetres, slownessOf(after)],
		);
		const latency = fromArrival / meanFactor - fromDistance - fromSpeed;
		arrival.push(
			['distance', fromDistance * meanFactor],
			['latency', latency * meanFactor],
			['speed of sound', fromSpeed * meanFactor],
		);
	}

	return partsOf([
		...arrival,
		['receiver constant', fromFactor],
		['common offset', after.sharedOffset + after.sharedShift - before.sharedOffset - before.sharedShift],
		['limits', roundingAfter.limits - roundingBefore.limits],
		['rounding', roundingAfter.rounding - roundingBefore.rounding],
		[before.isBass && after.isBass ? 'blend' : 'unexplained', own(after) - own(before)],
		['chosen', after.dialled - after.stepped - (before.dialled - before.stepped)],
	]);
}
