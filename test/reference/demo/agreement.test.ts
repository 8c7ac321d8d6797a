import {expect, test} from 'vitest';
import {solve} from '../../../source/calibration/solve.ts';
import type {ChannelId, Profile} from '../../../source/profile/types.ts';
import {trueMainDb} from './levels.ts';
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

test.each(rounds)('solve agrees with a pocket calculator on %s to a step of the receiver', (_, profile) => {
	const entered = profile.settings!.find(({id}) => id === 'decided')!;
	for (const {id, timing, trimDb} of solve(profile).channels) {
		// One step of 5 cm and one of 0.5 dB: joint rounding may move all of them by up to one.
		expect(Math.abs(timing!.stepped - entered.channels[id]!.distanceMetres!.stepped)).toBeLessThan(0.0501);
		expect(Math.abs(trimDb!.stepped - entered.channels[id]!.trimDb!.stepped)).toBeLessThan(0.501);
	}
});
