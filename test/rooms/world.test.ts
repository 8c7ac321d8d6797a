import {expect, test} from 'vitest';
import {
	besideSeat,
	boxesOf,
	drawsOf,
	heldExactly,
	heldLength,
	readMeter,
	readTape,
	trueLevel,
	worldOf,
} from './index.ts';

const zero = boxesOf({channels: {}});
const allOn = ['FC', 'sub1', 'sub2'] as const;

test('a room is the same for its number, whatever the kit', () => {
	const [known, hidden] = [worldOf('building', 3, 'known'), worldOf('building', 3, 'hidden')];
	expect(worldOf('building', 3, 'known').box).toEqual(known.box);
	expect(hidden.places).toEqual(known.places);
	expect(hidden.box).toEqual(known.box);
	expect(known.gear.subs.sub1.unstatedLatencyMs).toBe(0);
	expect(hidden.gear.subs.sub1.unstatedLatencyMs).toBeGreaterThanOrEqual(1);
	expect(worldOf('fresh', 3, 'known').sizeMetres).not.toEqual(known.sizeMetres);
});

test('in open space a speaker reads its level less its distance', () => {
	const world = worldOf('building', 1, 'anechoic');
	const band = {kind: 'pink', fromHertz: 355, toHertz: 2818} as const;
	const levels = (['FC', 'TpSiL'] as const).map(id => {
		const {at, seat} = world.places;
		const metres = Math.hypot(...at[id].map((value, axis) => value - seat[axis]!));
		const wanted = world.knobs.mainsDb + world.gear.mains[id].levelDb - 20 * Math.log10(metres);
		return trueLevel(world, zero, {into: [id], on: [id]}, band) - wanted;
	});
	// C weighting takes 0.2 dB at 2.8 kHz, the spreading over four samples up to 0.3 dB there; the middle of the band none.
	for (const level of levels) expect(Math.abs(level)).toBeLessThan(0.25);
	const trimmed = boxesOf({channels: {FC: {trimDb: {stepped: -3}}}, masterVolumeDb: 1});
	expect(
		trueLevel(world, trimmed, {into: ['FC'], on: ['FC']}, band) -
			trueLevel(world, zero, {into: ['FC'], on: ['FC']}, band),
	).toBeCloseTo(-2, 6);
});

test('a delay of half a period, or turned polarity, changes the sign of what the subs add', () => {
	const world = worldOf('building', 2, 'known');
	const channels = {FC: {crossoverHertz: 80}};
	const upright = boxesOf({channels});
	const turned = boxesOf({
		channels,
		outputs: {A: {polarityInverted: true}, B: {polarityInverted: true}},
	});
	const tone = {kind: 'tone', hertz: 80} as const;
	const energy = (boxes: typeof zero, addedDelayMs: number, on: readonly (typeof allOn)[number][] = allOn) =>
		10 ** (trueLevel(world, boxes, {into: ['FC'], on, addedDelayMs}, tone) / 10);
	const later = energy(upright, 6.25);
	expect(later / energy(turned, 0)).toBeCloseTo(1, 9);
	// |a + b|² + |a − b|² = 2(|a|² + |b|²)
	const apart = energy(upright, 0, ['FC']) + energy(upright, 0, ['sub1', 'sub2']);
	expect((energy(upright, 0) + later) / (2 * apart)).toBeCloseTo(1, 9);
});

test('twelve centimetres move tones of a room by about a decibel, and noise less', () => {
	const draws = drawsOf('beside');
	const squares = {tone: 0, noise: 0};
	const rooms = 12;
	for (let index = 0; index < rooms; index++) {
		const world = worldOf('building', index, 'known');
		const boxes = boxesOf({channels: {FC: {crossoverHertz: 80}}});
		const beside = besideSeat(world, 0.12, draws);
		const change = (signal: Parameters<typeof trueLevel>[3]) =>
			trueLevel(world, boxes, {into: ['FC'], on: allOn}, signal, beside) -
			trueLevel(world, boxes, {into: ['FC'], on: allOn}, signal);
		squares.tone += change({kind: 'tone', hertz: 100}) ** 2 / rooms;
		squares.noise += change({kind: 'pink', fromHertz: 355, toHertz: 2818}) ** 2 / rooms;
	}

	// Bounds for "about": a room that moves neither, or tones no more than noise, would be wrong.
	expect(Math.sqrt(squares.tone)).toBeGreaterThan(0.4);
	expect(Math.sqrt(squares.tone)).toBeLessThan(3);
	expect(Math.sqrt(squares.noise)).toBeGreaterThan(0.15);
	expect(Math.sqrt(squares.noise)).toBeLessThan(0.9);
});

test('instruments scatter as they should', () => {
	const world = worldOf('building', 4, 'known');
	const draws = drawsOf('instruments');
	const band = {kind: 'pink', fromHertz: 355, toHertz: 2818} as const;
	const playing = {into: ['FL'], on: ['FL']} as const;
	const level = trueLevel(world, zero, playing, band);
	const readings = Array.from({length: 2000}, () => readMeter(world, zero, playing, band, draws) - level);
	const deviation = Math.sqrt(readings.reduce((sum, one) => sum + one ** 2, 0) / readings.length);
	// 0.5 dB and the read-out's 0.029: standard error 0.008.
	expect(Math.abs(deviation - 0.5)).toBeLessThan(0.03);
	expect(heldLength(world, 'wall:left', 'wall:right', heldExactly, draws)).toBeCloseTo(
		world.sizeMetres[0],
		9,
	);
	expect(heldLength(world, 'seat1', 'floor', heldExactly, draws)).toBeCloseTo(world.places.seat[2], 9);
	expect(Math.abs(readTape(2, draws) - 2)).toBeLessThan(0.03);
});
