/** Nodes on [−1, 1] with what is needed to integrate, differentiate and interpolate between them. */
export type LobattoRule = {
	/** Rising, both ends among them; length order + 1. */
	readonly nodes: Float64Array;
	/** Weights of the quadrature, exact for polynomials up to degree 2·order − 1. */
	readonly weights: Float64Array;
	/** Derivative at node i of the Lagrange polynomial of node j, at i·(order + 1) + j. */
	readonly derivatives: Float64Array;
	/** Weights of barycentric interpolation. */
	readonly barycentric: Float64Array;
};

/** Values of the Legendre polynomials of degree n and n − 1 at x. */
function legendre(n: number, x: number): readonly [value: number, before: number] {
	let before = 1;
	let value = x;
	for (let k = 2; k <= n; k++) [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
	return [value, before];
}

/**
The Gauss-Legendre-Lobatto rule of a polynomial order.

@param order - Degree of the Lagrange polynomials, 1 to 64.
@throws {RangeError} If the order is not such a number.
@see Abramowitz and Stegun, Handbook of Mathematical Functions, 25.4.32; Berrut and Trefethen, Barycentric Lagrange
interpolation, SIAM Review 46 (2004), section 9.3 for the derivatives.
*/
export function gaussLobatto(order: number): LobattoRule {
	if (!Number.isInteger(order) || order < 1 || order > 64)
		throw new RangeError(`order: ${order}, expected a whole number from 1 to 64`);
	const count = order + 1;
	const nodes = new Float64Array(count);
	const weights = new Float64Array(count);
	for (let i = 0; i < count; i++) {
		// Chebyshev's nodes are near enough for Newton's iteration on (1 − x²)·P′ₙ(x).
		let x = -Math.cos((Math.PI * i) / order);
		for (let round = 0; round < 50; round++) {
			const [value, before] = legendre(order, x);
			const step = (x * value - before) / (count * value);
			x -= step;
			if (Math.abs(step) < 1e-15) break;
		}

		nodes[i] = i === 0 ? -1 : i === order ? 1 : x;
		weights[i] = 2 / (order * count * legendre(order, nodes[i]!)[0] ** 2);
	}

	const barycentric = new Float64Array(count).fill(1);
	for (let i = 0; i < count; i++) {
		// Doubling keeps the products near 1 (the interval's capacity is a half).
		for (let j = 0; j < count; j++) if (j !== i) barycentric[i]! /= 2 * (nodes[i]! - nodes[j]!);
	}

	const derivatives = new Float64Array(count * count);
	for (let i = 0; i < count; i++) {
		let sum = 0;
		for (let j = 0; j < count; j++) {
			if (j === i) continue;
			const value = barycentric[j]! / barycentric[i]! / (nodes[i]! - nodes[j]!);
			derivatives[i * count + j] = value;
			sum += value;
		}

		derivatives[i * count + i] = -sum;
	}

	return {nodes, weights, derivatives, barycentric};
}

/** Values at x of the Lagrange polynomials of the rule's nodes; length order + 1. */
export function lagrangeAt({nodes, barycentric}: LobattoRule, x: number): Float64Array {
	const values = new Float64Array(nodes.length);
	const hit = nodes.indexOf(x);
	if (hit >= 0) {
		values[hit] = 1;
		return values;
	}

	let sum = 0;
	for (let j = 0; j < nodes.length; j++) {
		values[j] = barycentric[j]! / (x - nodes[j]!);
		sum += values[j]!;
	}

	for (let j = 0; j < nodes.length; j++) values[j]! /= sum;
	return values;
}
