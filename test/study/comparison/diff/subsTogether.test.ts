import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {diffProfiles} from '../../../../source/study/comparison/diff/diffProfiles.ts';
import {solve} from '../../../afresh.ts';
import {taped} from '../../calibration/blend/pairRoom.ts';
import {roomProfile} from '../../calibration/blend/room.ts';

/** Two subs that nothing sets apart, the second at a distance; the receiver takes distances. */
function withSecondAt(metres: number): Profile {
	const profile = roomProfile(taped);
	const {bassProcessor: _, ...rest} = profile;
	return {
		...rest,
		subs: profile.subs!.map(({processorOutput: __, ...sub}) => sub),
		receiver: {
			...profile.receiver!,
			timing: {
				kind: 'distance',
				shownIn: 'm',
				stepMetres: 0.01,
				minimumMetres: 0,
				maximumMetres: 18,
				speedOfSoundMetresPerSecond: 343,
			},
		},
		settings: [],
		meter: [],
		tape: [
			{from: 'FL', to: 'sofa', metres: 3},
			{from: 'FC', to: 'sofa', metres: 2.8},
			{from: 'FR', to: 'sofa', metres: 3},
			{from: 'sub1', to: 'sofa', metres: 3.4},
			{from: 'sub2', to: 'sofa', metres: metres},
		],
	};
}

test('one of two subs on an output moves: the entry follows its distance, not a blend that there is none', () => {
	const [older, newer] = [withSecondAt(3.4), withSecondAt(2.87)];
	const {settings} = diffProfiles(
		{profile: older, solution: solve(older)},
		{profile: newer, solution: solve(newer)},
	);
	const entry = settings.find(({about, setting}) => about === 'LFE1' && setting === 'distance')!;
	// Timed by the middle of both, so by half the way that one moved; to the entry's step of 1 cm.
	expect(Math.abs(entry.change! + 0.53 / 2)).toBeLessThan(0.011);
	const amountOf = (cause: string) => entry.parts.find(part => part.cause === cause)?.amount ?? 0;
	expect(amountOf('blend')).toBeCloseTo(0, 9);
	expect(amountOf('latency')).toBeCloseTo(0, 9);
	// The tape network weighs readings: some millimetres of freedom.
	expect(Math.abs(amountOf('distance') + 0.53 / 2)).toBeLessThan(0.005);
	expect(entry.parts.reduce((sum, {amount}) => sum + amount, 0)).toBeCloseTo(entry.change!, 9);
});
