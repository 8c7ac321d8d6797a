import {readFileSync} from 'node:fs';
import fc from 'fast-check';
import {expect, test} from 'vitest';
import {roomModes} from '../../../source/study/room/modes.ts';
import type {RoomShape} from '../../../source/study/room/shape.ts';

// Ballou (ed.), Handbook for Sound Engineers, chapter 6, table 6-4: 16 × 12 × 8 ft at 1130 ft/s. The axial modes are
// printed; the others recomputed from Rayleigh's formula outside this project. Orders are length, width, height there.
const table: ReadonlyArray<readonly [length: number, width: number, height: number, hertz: number]> = [
	[1, 0, 0, 35.31],
	[0, 1, 0, 47.08],
	[1, 1, 0, 58.854],
	[0, 0, 1, 70.63],
	[2, 0, 0, 70.63],
	[1, 0, 1, 78.961],
	[1, 1, 1, 91.933],
	[0, 2, 0, 94.17],
	[3, 0, 0, 105.94],
	[2, 1, 1, 110.42],
	[0, 0, 2, 141.25],
	[4, 1, 0, 148.891],
];
const handbookRoom: RoomShape = {
	kind: 'box',
	widthMetres: 12 * 0.3048,
	lengthMetres: 16 * 0.3048,
	heightMetres: 8 * 0.3048,
};
const handbookSpeed = 1130 * 0.3048;

test('a box has the modes of the handbook table', () => {
	const {modes} = roomModes(handbookRoom, 150, handbookSpeed);
	// 29 modes to 150 Hz besides the one at 0 Hz.
	expect(modes.length).toBe(30);
	for (const [length, width, height, hertz] of table) {
		const mode = modes.find(({order}) => order.join() === [width, length, height].join());
		expect(mode!.frequencyHertz).toBeCloseTo(hertz, 1);
	}

	expect(modes.find(({order}) => order.join() === '1,2,1')!.kind).toBe('oblique');
	expect(modes.find(({order}) => order.join() === '0,2,0')!.kind).toBe('axial');
});

test('23 × 17 × 9 ft has the counts of modes recomputed outside this project', () => {
	const {modes} = roomModes(
		{kind: 'box', widthMetres: 17 * 0.3048, lengthMetres: 23 * 0.3048, heightMetres: 9 * 0.3048},
		200,
		handbookSpeed,
	);
	const below = (hertz: number) => modes.filter(mode => mode.frequencyHertz <= hertz).length - 1;
	expect([below(100), below(150), below(200)]).toEqual([22, 59, 123]);
});

const sizes = fc.record({
	widthMetres: fc.double({min: 2.5, max: 6, noNaN: true}),
	lengthMetres: fc.double({min: 3, max: 8, noNaN: true}),
	heightMetres: fc.double({min: 2.1, max: 3.5, noNaN: true}),
	across: fc.constantFrom(0 as const, 1 as const),
});

test('a ceiling of equal heights is a box: the same frequencies and the same sums over modes of one frequency', () => {
	fc.assert(
		fc.property(sizes, ({across, ...size}) => {
			const box = roomModes({kind: 'box', ...size}, 140, 343);
			const end = across === 0 ? size.widthMetres : size.lengthMetres;
			const places = [0, 0.4 * end, end].map(atMetres => ({atMetres, heightMetres: size.heightMetres}));
			const flat = roomModes({kind: 'ceiling', ...size, across, places}, 140, 343);
			for (const [n, mode] of box.modes.entries()) {
				// A mode a hair below the limit in one may lie above it in the other.
				if (mode.frequencyHertz > 138) break;
				expect(Math.abs(flat.modes[n]!.frequencyHertz - mode.frequencyHertz)).toBeLessThan(0.05);
			}

			// Single modes of one frequency may be mixed; their joint product of two points is not.
			const [a, b] = [
				[0.3, 0.4, 0.5],
				[1.9, 2.2, 1.1],
			] as const;
			const product = (modes: typeof box) => {
				const [one, other] = [modes.at(a)!, modes.at(b)!];
				return modes.modes.reduce(
					(sum, {frequencyHertz}, n) =>
						sum +
						((one[n]! * other[n]!) / ((2 * Math.PI * frequencyHertz) / 343 + 0.5) ** 2) *
							Number(frequencyHertz < 130),
					0,
				);
			};
			// Of some 5 at this point; a mode between 130 Hz and its computed neighbour adds at most 0.02.
			expect(Math.abs(product(flat) - product(box))).toBeLessThan(0.05);
		}),
		{numRuns: 12, seed: 5},
	);
});

test('a room with a corner missing has its fundamental below that of the box around it', () => {
	const shape: RoomShape = {
		kind: 'corner',
		widthMetres: 5,
		lengthMetres: 6,
		heightMetres: 2.5,
		missing: {corner: 'backRight', widthMetres: 2, lengthMetres: 2.5},
	};
	const {modes, at} = roomModes(shape, 120, 343);
	expect(modes[1]!.frequencyHertz).toBeLessThan(343 / 12);
	expect(modes[1]!.frequencyHertz).toBeGreaterThan(20);
	expect(at([4.5, 5.5, 1])).toBeUndefined();
	expect(at([1, 5.5, 1])).toBeDefined();
});

type Outside = {
	readonly heights?: ReadonlyArray<readonly [at: number, height: number]>;
	readonly widthMetres: number;
	readonly lengthMetres: number;
	readonly frequenciesHertz: readonly number[];
};
const outside = JSON.parse(
	readFileSync(new URL('../../reference/roomModes.json', import.meta.url), 'utf8'),
) as Readonly<Record<string, Outside>>;

// scipy's sparse eigsh on linear triangles, extrapolated from two grids (roomModes.py).
test.each(['sloped', 'gabled', 'broken', 'corner'])(
	'a %s room has the modes of finite elements within half a percent',
	name => {
		const {heights, widthMetres, lengthMetres, frequenciesHertz} = outside[name]!;
		const shape: RoomShape = heights
			? {
					kind: 'ceiling',
					widthMetres,
					lengthMetres,
					across: 0,
					places: heights.map(([atMetres, heightMetres]) => ({atMetres, heightMetres})),
				}
			: {
					kind: 'corner',
					widthMetres,
					lengthMetres,
					heightMetres: 2.5,
					missing: {corner: 'backRight', widthMetres: 2, lengthMetres: 2.5},
				};
		const {modes} = roomModes(shape, 125, 343);
		const upTo = frequenciesHertz.filter(hertz => hertz <= 120);
		expect(upTo.length).toBeGreaterThan(15);
		for (const [n, hertz] of upTo.entries())
			expect(Math.abs(modes[n]!.frequencyHertz - hertz)).toBeLessThanOrEqual(0.005 * hertz + 1e-9);
	},
);
