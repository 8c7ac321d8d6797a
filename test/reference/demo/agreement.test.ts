import {expect, test} from 'vitest';
import {isStale} from '../../../source/profile/ask/digest.ts';
import {isLfe} from '../../../source/profile/channels.ts';
import type {ChannelId, Profile} from '../../../source/profile/types.ts';
import {blend} from '../../../source/study/calibration/blend/blend.ts';
import {prove} from '../../../source/study/calibration/proof/prove.ts';
import {blendInputs, solve} from '../../afresh.ts';
import {attic, atticTruth2025, atticTruth2026} from './attic.ts';
import {cellar, cellarTruth2025, cellarTruth2026} from './cellar.ts';
import {decide} from './decide.ts';
import {trueMainDb} from './levels.ts';
import {blendReading} from './meter.ts';
import {twoYears} from './profiles.ts';
import {seededRandom} from './random.ts';
import {distanceMetres} from './tape.ts';
import type {Truth} from './truth.ts';

const [attic2025, attic2026] = twoYears(attic);
const [cellar2025, cellar2026] = twoYears(cellar);
const rounds: ReadonlyArray<readonly [string, Profile, Truth]> = [
	['cellar-2025', cellar2025, cellarTruth2025],
	['cellar-2026', cellar2026, cellarTruth2026],
	['attic-2025', attic2025, atticTruth2025],
	['attic-2026', attic2026, atticTruth2026],
];

test.each(rounds)(
	'what is solved from the first round of %s agrees with the true room',
	(_, profile, truth) => {
		const {channels} = solve(profile);
		for (const id of Object.keys(truth.speakers) as ChannelId[]) {
			const {distance, trimDb} = channels.find(channel => channel.id === id)!;
			const trueMetres = distanceMetres(truth.speakers[id]!.at, truth.seats.middle!);
			// Two readings of 2 mm and 1 mm/m each: 4 standard deviations are below 12 mm at 4 m.
			expect(Math.abs(distance!.metres - trueMetres)).toBeLessThan(0.012);
			// Three readings of 0.3 dB: 4 standard deviations are 0.7 dB.
			expect(Math.abs(trimDb!.exact - (75 - trueMainDb(truth, id, 'middle')))).toBeLessThan(0.7);
		}
	},
);

test.each(rounds)(
	'solve agrees with a pocket calculator on %s to a step of the receiver',
	(_, profile, truth) => {
		const [found] = profile.settings!;
		const taken = {truth, tape: profile.tape!, meter: profile.meter!, found: found!};
		const entered = decide(taken, 'entered', '2026-04-18T18:10:00Z');
		for (const {id, timing, trimDb} of solve(profile).channels) {
			// The tones through the crossover place the subs; the calculator knows only tape and levels.
			if (isLfe(id)) continue;
			// One step of 5 cm and one of 0.5 dB: joint rounding may move all of them by up to one.
			expect(Math.abs(timing!.stepped - entered.channels[id]!.distanceMetres!.stepped)).toBeLessThan(0.0501);
			expect(Math.abs(trimDb!.stepped - entered.channels[id]!.trimDb!.stepped)).toBeLessThan(0.501);
		}
	},
);

test.each(rounds)('the settings kept in %s are what its first round still gives', (_, profile) => {
	const decided = profile.settings!.find(({id}) => id === 'decided')!;
	expect(isStale(profile)).toBe(false);
	for (const {id, timing, trimDb} of solve(profile).channels) {
		expect(timing!.stepped).toBe(decided.channels[id]!.distanceMetres!.stepped);
		expect(trimDb!.stepped).toBe(decided.channels[id]!.trimDb!.stepped);
	}
});

test.each(rounds)('the proof of %s is met', (_, profile) => {
	expect(prove(profile).verdict).toBe('met');
});

test.each(rounds)('the blend of %s is finished, and what it kept is decided', (_, profile) => {
	const {status, wanted, otherRelation} = blend(blendInputs(profile));
	expect(['kept', 'put back', 'stands']).toContain(status);
	if (status === 'kept') expect(wanted!.isDecided).toBe(true);
	expect(otherRelation).toEqual([]);
});

test.each(rounds)(
	'subs and fronts of %s add up in the true room as the blend promised',
	(_, profile, truth) => {
		const random = seededRandom(1);
		const {fronts, blocks, status} = blend(blendInputs(profile));
		const noise = blocks.flatMap(({steps}) => steps).find(({signal}) => signal.kind === 'pink');
		if (status !== 'kept' || !noise) return;
		const levelIn = (id: string) => {
			const settings = profile.settings!.find(set => set.id === id)!;
			const step = {...noise, playInto: fronts, added: {delayMs: 0, isTurned: false}};
			return blendReading({truth, settings, random, round: 'first'}, step).decibels;
		};
		// Two readings each of 0.3 dB told 0.8 dB in sum; one of them here, three standard deviations of two readings.
		expect(levelIn('decided') - levelIn('distances')).toBeGreaterThan(0.4 - 3 * 0.3 * Math.SQRT2);
	},
);
