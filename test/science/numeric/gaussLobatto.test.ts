import {expect, test} from 'vitest';
import {gaussLobatto, lagrangeAt} from '../../../source/science/numeric/gaussLobatto.ts';

// Abramowitz and Stegun, table 25.6 (printed to nine decimals), from memory and equal to the closed forms.
test('gaussLobatto gives the nodes and weights of table 25.6', () => {
	const {nodes, weights} = gaussLobatto(4);
	const printed = [
		[-1, 0.1],
		[-0.654653671, 0.544444444],
		[0, 0.711111111],
	] as const;
	for (const [i, [node, weight]] of printed.entries()) {
		expect(nodes[i]).toBeCloseTo(node, 9);
		expect(weights[i]).toBeCloseTo(weight, 9);
	}
});

test.each([1, 5, 12, 33])(
	'the rule of order %i integrates what it promises and differentiates a polynomial',
	order => {
		const {nodes, weights, derivatives} = gaussLobatto(order);
		const degree = 2 * order - 1;
		// ∫ xᵈ over [−1, 1] is 2/(d + 1) for even d and 0 for odd: a sum of both is exact to rounding.
		const sum = nodes.reduce((total, x, i) => total + weights[i]! * (x ** degree + x ** (degree - 1)), 0);
		expect(sum).toBeCloseTo(2 / degree, 12);
		for (const [i, x] of nodes.entries()) {
			let slope = 0;
			for (const [j, other] of nodes.entries()) slope += derivatives[i * (order + 1) + j]! * other ** order;
			// Rounding of a differentiation matrix grows with the square of the order.
			expect(Math.abs(slope - order * x ** (order - 1))).toBeLessThan(1e-13 * order ** 3 + 1e-14);
		}
	},
);

test('lagrangeAt reproduces a polynomial between the nodes and at one', () => {
	const rule = gaussLobatto(6);
	for (const x of [-0.31, 0.77, rule.nodes[2]!]) {
		const shapes = lagrangeAt(rule, x);
		const value = shapes.reduce((sum, shape, j) => sum + shape * rule.nodes[j]! ** 5, 0);
		expect(value).toBeCloseTo(x ** 5, 12);
	}
});

test('an order that is none is refused', () => {
	expect(() => gaussLobatto(0)).toThrow('order: 0');
});
