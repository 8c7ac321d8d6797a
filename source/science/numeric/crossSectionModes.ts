import {gaussLobatto, type LobattoRule, lagrangeAt} from './gaussLobatto.ts';
import {lowestEigen} from './lowestEigen.ts';

/**
A piece of a plane domain with two parallel sides: u runs from `from` to `to`, v from `low` to a top that changes
linearly with u. Neighbours share whole sides.
*/
export type Strip = {
	readonly from: number;
	readonly to: number;
	readonly low: number;
	readonly topAtFrom: number;
	readonly topAtTo: number;
};

/** Eigenfunctions of −Δ with vanishing normal derivative on a plane domain. */
export type CrossSectionModes = {
	/** Rising; the first is 0, of the constant. Unit: 1 / length². */
	readonly eigenvalues: readonly number[];
	/** Every eigenfunction, or the first so many, at a point, scaled so that its square integrates to 1; undefined outside the domain. */
	readonly at: (u: number, v: number, most?: number) => Float64Array | undefined;
};

type Element = Strip & {
	readonly alongU: LobattoRule;
	readonly alongV: LobattoRule;
	readonly nodes: Int32Array;
};

/** Nodes a strip needs over a length so that waves of the largest eigenvalue come out to a thousandth, those of half of it to 1e-5. */
function orderFor(length: number, largest: number): number {
	const halfWaves = (Math.sqrt(largest) * length) / Math.PI;
	return Math.min(40, Math.max(4, Math.ceil(5 + 1.1 * halfWaves)));
}

const topOf = (strip: Strip, share: number): number =>
	strip.topAtFrom + (strip.topAtTo - strip.topAtFrom) * share;

/** Numbers the nodes of all strips; those at one place are one. */
function elementsOf(strips: readonly Strip[], largest: number): {elements: Element[]; count: number} {
	const scale = Math.max(...strips.map(({to, topAtFrom, topAtTo}) => Math.max(to, topAtFrom, topAtTo)));
	const numbers = new Map<string, number>();
	// Strips in one column share an order along u, strips in one row along v: their sides meet node by node.
	const column = ({from, to}: Strip) => `${from}|${to}`;
	const orderU = new Map<string, number>();
	for (const strip of strips) orderU.set(column(strip), orderFor(strip.to - strip.from, largest));
	const isOneRow = strips.every(({low}) => low === strips[0]!.low);
	const tallest = Math.max(...strips.map(strip => Math.max(strip.topAtFrom, strip.topAtTo) - strip.low));
	const elements = strips.map(strip => {
		const alongU = gaussLobatto(orderU.get(column(strip))!);
		const tall = isOneRow ? tallest : Math.max(strip.topAtFrom, strip.topAtTo) - strip.low;
		const alongV = gaussLobatto(orderFor(tall, largest));
		const nodes = new Int32Array(alongU.nodes.length * alongV.nodes.length);
		for (let i = 0; i < alongU.nodes.length; i++) {
			const share = (alongU.nodes[i]! + 1) / 2;
			const u = strip.from + (strip.to - strip.from) * share;
			for (let j = 0; j < alongV.nodes.length; j++) {
				const v = strip.low + ((topOf(strip, share) - strip.low) * (alongV.nodes[j]! + 1)) / 2;
				const key = `${Math.round((u / scale) * 1e9)}|${Math.round((v / scale) * 1e9)}`;
				const number = numbers.get(key) ?? numbers.size;
				numbers.set(key, number);
				nodes[i * alongV.nodes.length + j] = number;
			}
		}

		return {...strip, alongU, alongV, nodes};
	});
	return {elements, count: numbers.size};
}

/**
Adds one strip's part to the stiffness and to the lumped mass.

With x = ∂u/∂ξ constant, the map's other derivatives are ∂v/∂η = half the height and ∂v/∂ξ = the slope of the side at
that height; gradients follow from the inverse of that triangular matrix.
*/
function assemble(element: Element, stiffness: Float64Array, mass: Float64Array): void {
	const {alongU, alongV, nodes} = element;
	const [nu, nv] = [alongU.nodes.length, alongV.nodes.length];
	const halfWidth = (element.to - element.from) / 2;
	const slope = (element.topAtTo - element.topAtFrom) / 2;
	const local = nu * nv;
	const gradientU = new Float64Array(local);
	const gradientV = new Float64Array(local);
	for (let i = 0; i < nu; i++) {
		const halfHeight = (topOf(element, (alongU.nodes[i]! + 1) / 2) - element.low) / 2;
		for (let j = 0; j < nv; j++) {
			const weight = alongU.weights[i]! * alongV.weights[j]! * halfWidth * halfHeight;
			mass[nodes[i * nv + j]!]! += weight;
			const tilt = (slope * (alongV.nodes[j]! + 1)) / 2;
			// Gradients of the shape functions that do not vanish at this node: those of its row and of its column.
			const touched: number[] = [];
			for (let k = 0; k < nu; k++) {
				const at = k * nv + j;
				gradientU[at] = alongU.derivatives[i * nu + k]! / halfWidth;
				gradientV[at] = 0;
				touched.push(at);
			}

			for (let k = 0; k < nv; k++) {
				const at = i * nv + k;
				const alongHeight = alongV.derivatives[j * nv + k]! / halfHeight;
				if (k !== j) {
					gradientU[at] = 0;
					gradientV[at] = 0;
					touched.push(at);
				}

				gradientU[at]! -= (tilt / halfWidth) * alongHeight;
				gradientV[at]! += alongHeight;
			}

			for (const a of touched) {
				const row = nodes[a]! * mass.length;
				for (const b of touched)
					stiffness[row + nodes[b]!]! +=
						weight * (gradientU[a]! * gradientU[b]! + gradientV[a]! * gradientV[b]!);
			}
		}
	}
}

/**
Eigenfunctions of −Δ on a plane domain with rigid sides, by spectral elements: Lagrange polynomials on
Gauss-Lobatto nodes, whose quadrature makes the mass diagonal. A generator: it yields every few milliseconds.

@param strips - Pieces that tile the domain, side to side.
@param largest - Largest eigenvalue wanted, 1 / length².
@throws {RangeError} If a strip has no width or no height.
@see Canuto, Hussaini, Quarteroni and Zang, Spectral Methods: Fundamentals in Single Domains (2006), chapter 5.
*/
export function* crossSectionModes(
	strips: readonly Strip[],
	largest: number,
): Generator<void, CrossSectionModes> {
	for (const {from, to, low, topAtFrom, topAtTo} of strips) {
		if (!(to > from && topAtFrom >= low && topAtTo >= low && Math.max(topAtFrom, topAtTo) > low))
			throw new RangeError(
				`strip: ${from} to ${to}, ${low} to ${topAtFrom} and ${topAtTo}, expected a width and a height`,
			);
	}

	const {elements, count} = elementsOf(strips, largest);
	const stiffness = new Float64Array(count * count);
	const mass = new Float64Array(count);
	for (const element of elements) {
		assemble(element, stiffness, mass);
		yield;
	}

	const scale = mass.map(value => 1 / Math.sqrt(value));
	for (let a = 0; a < count; a++)
		for (let b = 0; b < count; b++) stiffness[a * count + b]! *= scale[a]! * scale[b]!;
	const {values, vectors} = yield* lowestEigen(stiffness, count, largest);
	const wanted = values.length;
	// Node by node, so that the sums at a point run along memory.
	const modes = new Float64Array(count * wanted);
	for (const [n, vector] of vectors.entries())
		for (let a = 0; a < count; a++) modes[a * wanted + n] = vector[a]! * scale[a]!;
	return {
		eigenvalues: values.map((value, n) => (n === 0 ? 0 : value)),
		at: (u, v, most = wanted) => shapesAt(elements, {modes, wanted}, Math.min(most, wanted), u, v),
	};
}

/** The first so many eigenfunctions at a point; undefined outside. */
function shapesAt(
	elements: readonly Element[],
	{modes, wanted}: {readonly modes: Float64Array; readonly wanted: number},
	most: number,
	u: number,
	v: number,
): Float64Array | undefined {
	for (const element of elements) {
		const share = (u - element.from) / (element.to - element.from);
		if (share < -1e-9 || share > 1 + 1e-9) continue;
		const height = topOf(element, share) - element.low;
		const rise = height > 0 ? (v - element.low) / height : 0;
		if (rise < -1e-9 || rise > 1 + 1e-9) continue;
		const shapesU = lagrangeAt(element.alongU, 2 * share - 1);
		const shapesV = lagrangeAt(element.alongV, 2 * rise - 1);
		const found = new Float64Array(most);
		for (let i = 0; i < shapesU.length; i++) {
			for (let j = 0; j < shapesV.length; j++) {
				const shape = shapesU[i]! * shapesV[j]!;
				const row = element.nodes[i * shapesV.length + j]! * wanted;
				for (let n = 0; n < most; n++) found[n]! += shape * modes[row + n]!;
			}
		}

		return found;
	}

	return undefined;
}
