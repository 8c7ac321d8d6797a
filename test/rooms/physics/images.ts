import type {Box, Point, Source} from './box.ts';

/** Images along one axis, nearest first: offset to the receiver, whether mirrored, and amplitude factor by octave. */
type Axis = {
	readonly count: number;
	readonly offsets: Float64Array;
	readonly mirrored: Int8Array;
	/** `factors[octave][index]`. */
	readonly factors: readonly Float64Array[];
};

/**
Images of a coordinate between two walls.

@see Allen and Berkley, Journal of the Acoustical Society of America 65 (1979) 943: the m-th image lies at m·L + s for even m and at (m + 1)·L − s for odd; on
its way it meets one wall ⌈|m|/2⌉ times and the other ⌊|m|/2⌋ times.
*/
function axisOf(
	size: number,
	source: number,
	receiver: number,
	walls: readonly (readonly [number, number])[],
	reach: number,
): Axis {
	const orders: Array<readonly [offset: number, order: number]> = [];
	const most = Math.ceil(reach / size) + 1;
	for (let order = -most; order <= most; order++) {
		const at = order % 2 === 0 ? order * size + source : (order + 1) * size - source;
		if (Math.abs(at - receiver) <= reach) orders.push([receiver - at, order]);
	}

	orders.sort((a, b) => Math.abs(a[0]) - Math.abs(b[0]));
	return {
		count: orders.length,
		offsets: Float64Array.from(orders, ([offset]) => offset),
		mirrored: Int8Array.from(orders, ([, order]) => (order % 2 === 0 ? 1 : -1)),
		factors: walls.map(([low, high]) =>
			Float64Array.from(orders, ([, order]) => {
				const more = Math.ceil(Math.abs(order) / 2);
				const less = Math.floor(Math.abs(order) / 2);
				return order > 0 ? high ** more * low ** less : low ** more * high ** less;
			}),
		),
	};
}

export type Axes = readonly [Axis, Axis, Axis];

/** @param bands - Indices into the octaves. */
export function axesOf(box: Box, source: Point, receiver: Point, bands: readonly number[]): Axes {
	const reach = box.speedOfSound * box.longestSeconds;
	const walls = (low: number, high: number) =>
		bands.map(band => [box.reflections![band]![low]!, box.reflections![band]![high]!] as const);
	const [width, length, height] = box.sizeMetres;
	return [
		axisOf(width, source[0], receiver[0], walls(0, 1), reach),
		axisOf(length, source[1], receiver[1], walls(2, 3), reach),
		axisOf(height, source[2], receiver[2], walls(4, 5), reach),
	];
}

export type Visit = (metres: number, x: number, y: number, z: number) => void;

/** Calls `visit` for each image within reach with its distance and its indices along the three axes. */
export function eachImage(box: Box, [xs, ys, zs]: Axes, visit: Visit): void {
	const farthest = (box.speedOfSound * box.longestSeconds) ** 2;
	for (let x = 0; x < xs.count; x++) {
		const squareX = xs.offsets[x]! ** 2;
		if (squareX > farthest) break;
		for (let y = 0; y < ys.count; y++) {
			const squareXy = squareX + ys.offsets[y]! ** 2;
			if (squareXy > farthest) break;
			for (let z = 0; z < zs.count; z++) {
				const square = squareXy + zs.offsets[z]! ** 2;
				if (square > farthest) break;
				visit(Math.sqrt(square), x, y, z);
			}
		}
	}
}

/**
How strongly a source radiates towards an image's ray: 1, or for a dipole the cosine of the angle between its axis and
the ray as it left the true source.
*/
export function radiation(
	{dipoleAxis}: Source,
	[xs, ys, zs]: Axes,
	metres: number,
	x: number,
	y: number,
	z: number,
): number {
	if (!dipoleAxis) return 1;
	return (
		(dipoleAxis[0] * xs.offsets[x]! * xs.mirrored[x]! +
			dipoleAxis[1] * ys.offsets[y]! * ys.mirrored[y]! +
			dipoleAxis[2] * zs.offsets[z]! * zs.mirrored[z]!) /
		(metres * Math.hypot(...dipoleAxis))
	);
}
