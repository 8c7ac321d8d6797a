import {expect, test} from 'vitest';
import type {Profile} from '../../../source/profile/types.ts';
import {sentenceOf} from '../../../source/report/said/said.ts';
import {sayIn} from '../../../source/report/said/say.ts';
import {adjustNetwork} from '../../../source/study/survey/adjust.ts';
import {
	bareProfile,
	type Ends,
	gaussian,
	inventedPlaces,
	inventedSize,
	thoroughEnds,
	trueReading,
	withReadings,
} from './room.ts';

/** Held as firmly as the smallest slips need: an inch is less than two sigmas of a hand at an ear. */
const firm = {tapeHeldMetres: {seat: 0.001, centre: 0.001, plane: 0.001}};
const base = (seed: number, unit: Profile['lengthUnit'] = 'm') => ({
	...withReadings({...bareProfile(), kit: firm}, thoroughEnds(bareProfile()), {seed}),
	lengthUnit: unit,
});
const indexOf = (profile: Profile, [from, to]: Ends) =>
	profile.tape!.findIndex(reading => reading.from === from && reading.to === to);
const spoil = (profile: Profile, ends: Ends, wrong: (metres: number) => number): Profile => {
	const at = indexOf(profile, ends);
	return {
		...profile,
		tape: profile.tape!.map((one, index) => (index === at ? {...one, metres: wrong(one.metres)} : one)),
	};
};

test('adjustNetwork suspects nothing in a sound round', () => {
	expect(adjustNetwork(base(1)).suspects).toEqual([]);
});

test.each([
	['FL', 'sofa', 'one foot too long', 'm', (d: number) => d + 0.3048, 'one-foot'],
	['FR', 'wall:front', 'ten centimetres too short', 'm', (d: number) => d - 0.1, 'ten-centimetres'],
	['LS', 'sofa', 'one inch too long', 'ft-in', (d: number) => d + 0.0254, 'one-inch'],
	['RS', 'wall:front', 'one metre too short', 'm', (d: number) => d - 1, 'one-metre'],
	['FC', 'sofa', 'read in feet and entered as metres', 'm', (d: number) => d / 0.3048, 'feet-as-metres'],
	['TpSiL', 'sofa', 'read in metres and entered as feet', 'ft', (d: number) => d * 0.3048, 'metres-as-feet'],
] as const)('adjustNetwork names %s to %s when it is %s', (from, to, _, unit, wrong, code) => {
	const sound = base(2, unit);
	const profile = spoil(sound, [from, to], wrong);
	const index = indexOf(profile, [from, to]);
	const {suspects} = adjustNetwork(profile);
	expect(suspects.map(suspect => suspect.index)).toEqual([index]);
	expect(suspects[0]!.causes[0]!.code).toBe(code);
	expect(Math.abs(suspects[0]!.causes[0]!.metres - sound.tape![index]!.metres)).toBeLessThan(1e-9);
});

test('adjustNetwork names swapped digits and the value they stand for', () => {
	const sound = {...base(3), lengthUnit: 'm' as const};
	const at = indexOf(sound, ['LS', 'wall:front']);
	const rounded = {
		...sound,
		tape: sound.tape!.map((one, index) => (index === at ? {...one, metres: 4.3} : one)),
	};
	const {suspects} = adjustNetwork(spoil(rounded, ['LS', 'wall:front'], () => 3.4));
	expect(suspects[0]!.index).toBe(at);
	expect(suspects[0]!.causes.map(({code}) => code)).toContain('swapped-digits');
	expect(suspects[0]!.causes.find(({code}) => code === 'swapped-digits')!.metres).toBeCloseTo(4.3, 9);
});

test('adjustNetwork names the other speaker when left was meant and right was measured', () => {
	const sound = base(4);
	const other = trueReading(sound, inventedPlaces, inventedSize, ['TpSiR', 'wall:left']);
	const {suspects, remarks} = adjustNetwork(spoil(sound, ['TpSiL', 'wall:left'], () => other));
	expect(suspects).toHaveLength(1);
	expect(suspects[0]!.causes.map(({code}) => code)).toContain('left-for-right');
	expect(sentenceOf(remarks[0]!, sayIn(sound))).toMatch(
		/Top side left: 3\.05 m to left wall is 1\.9\d m longer than the other readings allow, which give 1\.1\d m\. Perhaps taken (from Top side right|to right wall) instead/,
	);
});

test('adjustNetwork names the corner when the tape was not square to the wall', () => {
	const sound = base(5);
	const slanted = Math.hypot(inventedPlaces.FR![1], inventedSize[0] - inventedPlaces.FR![0]);
	const {suspects} = adjustNetwork(spoil(sound, ['FR', 'wall:front'], () => slanted));
	expect(suspects[0]!.causes.map(({code}) => code)).toContain('corner');
});

test('adjustNetwork names the tape’s case when a wall-to-wall reading is short by it', () => {
	const {suspects} = adjustNetwork(spoil(base(6), ['wall:left', 'wall:right'], d => d - 0.082));
	expect(suspects).toHaveLength(1);
	expect(suspects[0]!.causes[0]!.code).toBe('tape-case');
});

test('adjustNetwork finds two blunders one after the other', () => {
	const profile = spoil(
		spoil(base(7), ['FL', 'sofa'], d => d + 0.3048),
		['RS', 'wall:front'],
		d => d - 0.1,
	);
	const found = adjustNetwork(profile)
		.suspects.map(({index}) => index)
		.sort((a, b) => a - b);
	expect(found).toEqual(
		[indexOf(profile, ['RS', 'wall:front']), indexOf(profile, ['FL', 'sofa'])].sort((a, b) => a - b),
	);
});

test('adjustNetwork names together the readings that cannot be told apart', () => {
	// One surplus reading at the sub: floor, two walls and the seat share it, so that any of the four may be wrong.
	const ends = thoroughEnds(bareProfile()).filter(([from, to]) => !(from === 'FL' && to === 'sub1'));
	const profile = spoil(withReadings(bareProfile(), ends, {seed: 8}), ['sub1', 'sofa'], d => d + 0.2);
	const {suspects, remarks} = adjustNetwork(profile);
	const sub = new Set(profile.tape!.flatMap(({from}, index) => (from === 'sub1' ? [index] : [])));
	expect(suspects).toHaveLength(1);
	expect(suspects[0]!.alternatives.length).toBeGreaterThan(0);
	for (const index of [suspects[0]!.index, ...suspects[0]!.alternatives]) expect(sub.has(index)).toBe(true);
	expect(sentenceOf(remarks[0]!, sayIn(profile))).toMatch(/It (could also be|is one of these two: ).*Retake/);
});

// Baarda: a blunder of the detectable size is found by its own test with a probability of 0.80 (critical value 3.2905,
// noncentrality 4.1321). 400 seeded rounds: three binomial standard deviations are 3·√(0.8·0.2/400) = 0.06. Adding noise
// to the blunder moves its statistic, not the statistic's law; the equations are as good as linear at this size.
test('a blunder of the detectable size shows in its own test as often as promised', () => {
	const exact = withReadings(bareProfile(), thoroughEnds(bareProfile()));
	const clean = adjustNetwork(exact);
	const index = indexOf(exact, ['FL', 'sofa']);
	const {detectableMetres} = clean.readings[index]!;
	const sigmas = clean.readings.map(({sigmaMetres}) => sigmaMetres);
	let found = 0;
	const rounds = 400;
	for (let round = 0; round < rounds; round++) {
		const random = gaussian(1000 + round);
		const tape = exact.tape!.map((one, k) => ({
			...one,
			metres: Math.max(0, one.metres + random() * sigmas[k]! + (k === index ? detectableMetres! : 0)),
			sigmaMetres: sigmas[k]!,
		}));
		const result = adjustNetwork({...exact, tape});
		// Found means taken out, or named as what it could be instead: the test itself does not choose among its like.
		const isNamed = result.suspects.some(
			suspect => suspect.index === index || suspect.alternatives.includes(index),
		);
		if (isNamed) found++;
	}

	expect(found / rounds).toBeGreaterThan(0.74);
	expect(found / rounds).toBeLessThan(0.9);
});

test('twice the detectable size is found nearly always and named first', () => {
	const exact = withReadings(bareProfile(), thoroughEnds(bareProfile()));
	const clean = adjustNetwork(exact);
	const index = indexOf(exact, ['FR', 'sofa']);
	let found = 0;
	for (let round = 0; round < 50; round++) {
		const random = gaussian(5000 + round);
		const tape = exact.tape!.map((one, k) => ({
			...one,
			metres: Math.max(
				0,
				one.metres +
					random() * clean.readings[k]!.sigmaMetres +
					(k === index ? 2 * clean.readings[index]!.detectableMetres! : 0),
			),
			sigmaMetres: clean.readings[k]!.sigmaMetres,
		}));
		if (adjustNetwork({...exact, tape}).suspects[0]?.index === index) found++;
	}

	// Power at twice the noncentrality is 1 − 1e−6; picking the right one among its like is what may fail.
	expect(found).toBeGreaterThanOrEqual(45);
});
