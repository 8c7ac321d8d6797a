import {expect, test} from 'vitest';
import type {Profile} from '../../../source/profile/types.ts';
import {surveyNetwork} from '../../../source/study/survey/network.ts';
import {isUsable, type Observation, observationOf} from '../../../source/study/survey/observations.ts';
import {solveNetwork} from '../../../source/study/survey/solveNetwork.ts';
import {startState} from '../../../source/study/survey/starts.ts';
import cases from '../../reference/networks.json' with {type: 'json'};
import {bareProfile} from './room.ts';

function profileOf(one: (typeof cases)[number]): Profile {
	const [width, length, height] = one.exact;
	const {slope} = one;
	const places = Object.fromEntries(one.names.map(name => [name, [0, 0, 0] as const]));
	const profile = bareProfile(places, {
		...(width !== null && {widthMetres: width}),
		...(length !== null && {lengthMetres: length}),
		...(slope
			? {
					ceiling: {
						kind: 'sloped' as const,
						between: slope.axis === 0 ? ('wall:left-wall:right' as const) : ('wall:front-wall:back' as const),
						heightsMetres: slope.heights as [number, number],
					},
				}
			: height !== null && height !== undefined
				? {ceiling: {kind: 'flat' as const, heightMetres: height}}
				: {}),
	});
	return {
		...profile,
		tape: one.readings.map(([from, to, metres]) => ({
			from: String(from),
			to: String(to),
			metres: Number(metres),
		})),
	};
}

function adjusted(one: (typeof cases)[number]) {
	const profile = profileOf(one);
	const network = surveyNetwork(profile);
	const {points, ends} = network;
	const observations = profile
		.tape!.map((tape, index) => observationOf(ends, tape, index))
		.filter((o): o is Observation => isUsable(o));
	expect(observations.length).toBe(profile.tape!.length);
	const solved = solveNetwork(network, observations, startState(profile, points, observations));
	// Columns of the unknowns in the order of the reference: its points, then the free dimensions.
	const offsets = [
		...one.names.flatMap(name => [0, 1, 2].map(axis => points.findIndex(({id}) => id === name) * 3 + axis)),
		...Object.keys(one.dimensions).map(axis => points.length * 3 + Number(axis)),
	];
	return {solved, offsets};
}

// scipy.optimize.least_squares (trf, exact derivatives) on twenty seeded random rooms: test/reference/networks.py.
// Both solve the same equations to convergence; a micrometre is a thousandth of the finest tape division, and one part
// in ten thousand of a sigma is far below what a sigma is known to.
test.each(cases.map((one, index) => ({index, one})))(
	'solveNetwork finds the places that scipy finds in random room $index, from its own start',
	({one}) => {
		const {solved, offsets} = adjusted(one);
		const expected = [...one.coordinates, ...Object.values(one.dimensions)];
		for (const [k, offset] of offsets.entries())
			expect(Math.abs(solved.state[offset]! - expected[k]!)).toBeLessThan(1e-6);
		expect(Math.abs((2 * solved.cost) / one.sumOfSquares - 1)).toBeLessThan(1e-6);
		expect(solved.conventions).toEqual([]);
		const variance = (a: number, b: number) =>
			solved.rows.covariance[
				solved.columnOf[offsets[a]!]! * solved.rows.unknowns + solved.columnOf[offsets[b]!]!
			]!;
		for (const [k, sigmaMm] of one.sigmasMm.entries()) {
			expect(Math.abs((Math.sqrt(variance(k, k)) * 1e3) / sigmaMm - 1)).toBeLessThan(1e-4);
		}

		for (const [a, row] of one.covarianceMm2.entries()) {
			for (const [b, value] of row.entries()) {
				const scale = one.sigmasMm[a]! * one.sigmasMm[b]!;
				expect(Math.abs(variance(a, b) * 1e6 - value)).toBeLessThan(1e-4 * scale);
			}
		}
	},
);
