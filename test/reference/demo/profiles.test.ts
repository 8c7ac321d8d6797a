import {readFileSync} from 'node:fs';
import {expect, test} from 'vitest';
import {checkProfile, parseProfile} from '../../../source/profile/file/parse.ts';
import {serialiseProfile} from '../../../source/profile/file/serialise.ts';
import type {ChannelId, Profile} from '../../../source/profile/types.ts';
import {attic, atticTruth2025, atticTruth2026} from './attic.ts';
import {cellar, cellarTruth2025, cellarTruth2026} from './cellar.ts';
import {
	bandWeightingDb,
	highPass,
	lowPass,
	mainsBandHertz,
	subBandHertz,
	toneSumDb,
	trueMainDb,
} from './levels.ts';
import {twoYears} from './profiles.ts';
import {seededRandom} from './random.ts';
import {distanceMetres, toPlaneMetres, truePoints} from './tape.ts';
import type {Truth} from './truth.ts';

const [attic2025, attic2026] = twoYears(attic);
const [cellar2025, cellar2026] = twoYears(cellar);
const rounds: ReadonlyArray<readonly [string, Profile, Truth]> = [
	['cellar-2025', cellar2025, cellarTruth2025],
	['cellar-2026', cellar2026, cellarTruth2026],
	['attic-2025', attic2025, atticTruth2025],
	['attic-2026', attic2026, atticTruth2026],
];

test.each(rounds)('%s is a sound profile, marked as invented', (_, profile) => {
	expect(checkProfile(profile)).toEqual([]);
	expect(profile.note).toMatch(/invented/);
});

// To write the files anew: npx vitest run --project unit test/reference/demo -u. The cellar is shipped, the attic stays for tests.
test.each(rounds)('the file of %s is what the script draws, and reads back as it', async (name, profile) => {
	const path = `../../../${name.startsWith('cellar') ? 'profiles' : 'test/fixtures'}/${name}.json`;
	await expect(serialiseProfile(profile)).toMatchFileSnapshot(path);
	const read = parseProfile(readFileSync(new URL(path, import.meta.url)), name);
	expect(read).toMatchObject({ok: true, profile});
});

test.each(rounds)('every point of %s lies in its room, below the ceiling', (_, __, truth) => {
	for (const point of Object.values(truePoints(truth))) {
		for (const plane of ['wall:left', 'wall:right', 'wall:front', 'wall:back', 'floor', 'ceiling']) {
			expect(toPlaneMetres(point, plane, truth)).toBeGreaterThan(0);
		}
	}
});

test.each(rounds)(
	'tape readings of %s agree with the true room within 4.5 standard deviations',
	(_, profile, truth) => {
		const points = truePoints(truth);
		const scores = profile.tape!.map(({from, to, metres}) => {
			const trueMetres = from.startsWith('wall:')
				? from === 'wall:left'
					? truth.widthMetres
					: truth.lengthMetres
				: points[to]
					? distanceMetres(points[from]!, points[to])
					: toPlaneMetres(points[from]!, to, truth);
			return (metres - trueMetres) / Math.sqrt(0.002 ** 2 + (0.001 * trueMetres) ** 2 + 0.001 ** 2 / 12);
		});
		expect(Math.max(...scores.map(Math.abs))).toBeLessThan(4.5);
		// The mean square of n standard normal scores is 1 with a standard deviation of √(2/n): 0.13 for the 115 readings and more.
		const meanSquare = scores.reduce((sum, score) => sum + score ** 2, 0) / scores.length;
		expect(Math.abs(meanSquare - 1)).toBeLessThan(4 * Math.sqrt(2 / scores.length));
	},
);

test.each(rounds)('the proof round of %s meets the target at the reference seat', (_, profile, truth) => {
	const proof = profile.meter!.filter(({round, signal}) => round === 'proof' && signal?.kind === 'pink');
	for (const id of Object.keys(truth.speakers) as ChannelId[]) {
		const levels = proof
			.filter(({source}) => source === id)
			.map(({decibels}) => decibels - bandWeightingDb(...mainsBandHertz));
		// A quarter step of trim, the mean of three readings before and two after with 0.3 dB each: 3 standard deviations.
		for (const level of levels) expect(Math.abs(level - 75)).toBeLessThan(1.3);
	}

	const decided = profile.settings!.find(({id}) => id === 'decided')!;
	for (const id of Object.keys(truth.speakers) as ChannelId[]) {
		expect(
			Math.abs(trueMainDb(truth, id, 'middle') + decided.channels[id]!.trimDb!.stepped - 75),
		).toBeLessThan(0.8);
	}
});

test('the C-weighting over the subs’ noise is −1.23 dB', () => {
	// Integral of the IEC 61672-1 C curve over pink noise from 28.2 to 112.2 Hz, computed apart with scipy: −1.23 dB, to 0.01.
	expect(bandWeightingDb(...subBandHertz)).toBeCloseTo(-1.23, 2);
});

test('the filters of the demo have their textbook values at the corner', () => {
	// Butterworth: −3.01 dB and 90° at the corner of a second-order high-pass; Linkwitz and Riley (JAES 24, 1976): −6.02 dB and −180°.
	expect(highPass(80, 80).decibels).toBeCloseTo(-3.0103, 3);
	expect(highPass(80, 80).phase).toBeCloseTo(Math.PI / 2, 9);
	expect(lowPass(80, 80).decibels).toBeCloseTo(-6.0206, 3);
	expect(lowPass(80, 80).phase).toBeCloseTo(-Math.PI, 9);
});

test('toneSumDb doubles in phase and cancels half a period apart', () => {
	const one = {levelDb: 70, timeMs: 0};
	expect(toneSumDb(50, [one, one])).toBeCloseTo(76.0206, 3);
	expect(toneSumDb(50, [one, {...one, timeMs: 10}])).toBeLessThan(-200);
});

test('seededRandom repeats itself, with mean 0 and variance 1', () => {
	const draw = () => {
		const {normal} = seededRandom(1);
		return Array.from({length: 10_000}, normal);
	};

	expect(draw()).toEqual(draw());
	const values = draw();
	const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
	const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
	// Four standard errors: 4/√n and 4·√(2/n).
	expect(Math.abs(mean)).toBeLessThan(0.04);
	expect(Math.abs(variance - 1)).toBeLessThan(0.057);
});
