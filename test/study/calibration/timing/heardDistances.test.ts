import {expect, test} from 'vitest';
import {inputsHash} from '../../../../source/profile/ask/digest.ts';
import {newProfile} from '../../../../source/profile/generic/newProfile.ts';
import type {Profile, RecordedResponse} from '../../../../source/profile/types.ts';
import {solve} from '../../../afresh.ts';

// An invented 5.1 at 343.2 m/s (20 °C, dry, to 0.1 %); the recording counts from the front left's first sound, and the
// receiver delays the centre by 2 ms.
const metres = {FL: 3, FR: 3.1, FC: 2.8, LS: 2, RS: 2.2};
const speed = 343.2;
const delays: Readonly<Record<string, number>> = {FC: 2};

function profileOf(
	tapedIds: readonly (keyof typeof metres)[],
	changes: Record<string, number> = {},
): Profile {
	const bare = newProfile({
		name: 'Cellar',
		date: '2026-04-18',
		layout: '5.1',
		receiver: 'fine-delay',
	});
	const seat = bare.seats[0]!.id;
	const arrival = (id: keyof typeof metres) =>
		(1000 * (metres[id] - metres.FL)) / speed + (delays[id] ?? 0) + (changes[id] ?? 0);
	return {
		...bare,
		air: {temperatureCelsius: 20},
		tape: tapedIds.map(id => ({from: id, to: seat, metres: metres[id]})),
		settings: [
			{
				id: 'now',
				origin: 'solved',
				channels: Object.fromEntries(
					bare.channels.map(({id}) => [id, {delayMs: {stepped: delays[id] ?? 0}}]),
				),
			},
		],
		recordings: [
			{id: 'r1', file: 'a.wav', sha256: 'a', atSeconds: 0, seat, round: 'first', inForce: 'now', clockPpm: 0},
		],
		responses: (Object.keys(metres) as (keyof typeof metres)[]).map(
			(source): RecordedResponse => ({
				source,
				seat,
				recording: 'r1',
				sha256: source,
				arrivalMs: arrival(source),
				arrivalSigmaMs: 0.03,
			}),
		),
	};
}

const distanceOf = (profile: Profile, id: string) =>
	solve(profile).channels.find(channel => channel.id === id)!.distance;

test('a speaker that was not taped gets its distance from its arrival, less the delay that stood', () => {
	const found = distanceOf(profileOf(['FL', 'FR', 'LS', 'RS']), 'FC')!;
	expect(found.from).toBe('recording');
	// 0.03 ms are 1 cm.
	expect(found.metres).toBeCloseTo(2.8, 2);
	expect(found.sigmaMetres).toBeGreaterThan(0.01);
	expect(found.sigmaMetres).toBeLessThan(0.03);
});

test('tape and recording are joined by their weights where they agree', () => {
	const taped = profileOf(['FL', 'FR', 'FC', 'LS', 'RS']);
	const wide = {...taped, tape: taped.tape!.map(reading => ({...reading, sigmaMetres: 0.05}))};
	const moved = {
		...wide,
		tape: wide.tape!.map(each => (each.from === 'LS' ? {...each, metres: 2.06} : each)),
	};
	const found = distanceOf(moved, 'LS')!;
	// 6 cm are within four sigma of 5 cm; the recording weighs twenty times as much as such a tape, but its own zero is taped.
	expect(found.metres).toBeGreaterThan(1.98);
	expect(found.metres).toBeLessThan(2.04);
	expect(found.sigmaMetres).toBeLessThan(0.05);
});

test('an arrival that no tape explains is left to the tape, and moves no other', () => {
	const link = profileOf(['FL', 'FR', 'FC', 'LS', 'RS'], {RS: 17.3});
	expect(distanceOf(link, 'RS')!.metres).toBeCloseTo(2.2, 6);
	expect(distanceOf(link, 'LS')!.metres).toBeCloseTo(2, 2);
});

test('two taped lines hold no recording, and settings go stale with arrivals', () => {
	expect(distanceOf(profileOf(['FL', 'FR']), 'FC')).toBeUndefined();
	const profile = profileOf(['FL', 'FR', 'LS', 'RS']);
	const {responses, ...without} = profile;
	expect(inputsHash(profile)).not.toBe(inputsHash(without as Profile));
	expect(responses).toHaveLength(5);
});
