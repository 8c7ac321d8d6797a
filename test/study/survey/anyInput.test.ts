import {expect, test} from 'vitest';
import {channelIds, isLfe} from '../../../source/profile/channels.ts';
import type {Profile} from '../../../source/profile/types.ts';
import {nextReadings} from '../../../source/study/placement/guidedTape.ts';
import {judgePlacement} from '../../../source/study/placement/placement.ts';
import {adjustNetwork} from '../../../source/study/survey/adjust.ts';
import {bareProfile} from './room.ts';

/** A linear congruential generator from 0 to 1. @see Park and Miller (1988). */
function uniformFrom(seed: number) {
	let state = seed;
	return () => {
		state = (state * 48271) % 2147483647;
		return state / 2147483647;
	};
}

/** Readings between random ends with random lengths: whatever they are, they are not of one room. */
function nonsense(profile: Profile, count: number, seed: number): Profile {
	const random = uniformFrom(seed);
	const ends = [
		'wall:left',
		'wall:right',
		'wall:front',
		'wall:back',
		'floor',
		'ceiling',
		'screen',
		'LFE1',
		'nothing',
		...profile.seats.map(({id}) => id),
		...profile.channels.map(({id}) => id),
		...(profile.subs ?? []).map(({id}) => id),
	];
	const pick = () => ends[Math.floor(random() * ends.length)]!;
	const lengths = [() => random() * 8, () => 0, () => 1000, () => random() * 1e-6];
	return {
		...profile,
		tape: Array.from({length: count}, () => ({
			from: pick(),
			to: pick(),
			metres: lengths[Math.floor(random() * lengths.length * 1.5)]?.() ?? random() * 5,
		})),
	};
}

test.each([1, 2, 3, 4, 5, 6, 7, 8])(
	'adjustNetwork survives nonsense of seed %i and says that it is nonsense',
	seed => {
		const rooms: Array<Partial<Profile['room']>> = [
			{},
			{widthMetres: 4, lengthMetres: 5},
			{ceiling: {kind: 'sloped', between: 'wall:front-wall:back', heightsMetres: [2, 3]}},
		];
		const profile = nonsense(bareProfile(undefined, rooms[seed % 3]), 20 + seed * 15, seed);
		const result = adjustNetwork(profile);
		expect(result.remarks.some(({kind}) => kind === 'problem')).toBe(true);
		for (const {at, worstSigmaMetres} of result.points) {
			expect(at.every(Number.isFinite)).toBe(true);
			expect(Number.isFinite(worstSigmaMetres)).toBe(true);
		}

		expect(JSON.stringify(judgePlacement(profile, result))).not.toContain('null');
		expect(nextReadings(profile, 2, result).length).toBeLessThanOrEqual(2);
	},
);

test('adjustNetwork comes to an end with the largest profile that the format allows in points', () => {
	const base = bareProfile();
	const profile = nonsense(
		{
			...base,
			seats: Array.from({length: 40}, (_, index) => ({
				id: `chair${index}`,
				name: `Chair ${index}`,
				reference: index === 0,
			})),
			channels: channelIds.filter(id => !isLfe(id)).map(id => ({id})),
		},
		600,
		99,
	);
	const result = adjustNetwork(profile);
	expect(result.points.length).toBe(40 + 1 + 30 + 1);
	expect(result.remarks.some(({code}) => code === 'tape-many')).toBe(true);
});
