import {expect, test} from 'vitest';
import {isStale} from '../../../source/profile/ask/digest.ts';
import {isLfe} from '../../../source/profile/channels.ts';
import type {ChannelId, Profile} from '../../../source/profile/types.ts';
import {blend} from '../../../source/study/calibration/blend/blend.ts';
import {prove} from '../../../source/study/calibration/proof/prove.ts';
import {solve} from '../../../source/study/calibration/solve.ts';
import {decide} from './decide.ts';
import {trueArrivalMs, trueMainDb} from './levels.ts';
import {attic2025, attic2026} from './profiles.ts';
import {distanceMetres} from './tape.ts';
import {type Truth, truth2025, truth2026} from './truth.ts';

const rounds: ReadonlyArray<readonly [string, Profile, Truth]> = [
	['attic-2025', attic2025(), truth2025],
	['attic-2026', attic2026(), truth2026],
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

test('the tones of attic-2025 tell how much later than the centre its sub arrives', () => {
	const [pair] = blend(attic2025()).pairs;
	const late = trueArrivalMs(truth2025, 'sub1', 'middle') - trueArrivalMs(truth2025, 'FC', 'middle');
	expect(pair!.minima).toHaveLength(1);
	const [minimum] = pair!.minima;
	expect(minimum!.inverted).toBe(false);
	// Nine tones of 0.3 dB give 0.1 ms; the deviations of the room itself leave the phase alone.
	expect(Math.abs(minimum!.arrivalMs - late)).toBeLessThan(0.4);
});
