import fc from 'fast-check';
import {expect, test} from 'vitest';
import type {Profile} from '../../../source/profile/types.ts';
import {sentenceOf} from '../../../source/report/said/said.ts';
import {sayIn} from '../../../source/report/said/say.ts';
import {adjustNetwork} from '../../../source/study/survey/adjust.ts';
import {distance, type Vector} from '../../../source/study/survey/vectors.ts';
import {bareProfile, type Ends, inventedPlaces, inventedSize, thoroughEnds, withReadings} from './room.ts';

const thorough = (seed?: number, profile = bareProfile()) =>
	withReadings(profile, thoroughEnds(profile), seed === undefined ? {} : {seed});
const with_ = (profile: Profile, changes: Readonly<Record<number, number>>): Profile => ({
	...profile,
	tape: profile.tape!.map((reading, index) => ({...reading, metres: reading.metres + (changes[index] ?? 0)})),
});
const indexOf = (profile: Profile, [from, to]: Ends) =>
	profile.tape!.findIndex(reading => reading.from === from && reading.to === to);
const at = (profile: Profile, id: string) => adjustNetwork(profile).points.find(point => point.id === id)!;

test('adjustNetwork says that there is nothing when nothing is read', () => {
	for (const tape of [undefined, [], [{from: 'FL', to: 'sofa', metres: 3, setAside: true}]]) {
		const result = adjustNetwork({...bareProfile(), ...(tape && {tape})});
		expect(result.remarks.map(({code}) => code)).toEqual(['tape-none']);
		expect(result.points.every(({status}) => status === 'unmeasured')).toBe(true);
		expect(result.suspects).toEqual([]);
	}
});

test.each([
	[{from: 'FL', to: 'FL', metres: 1}, 'tape-same-ends', 'both ends are the same thing'],
	[{from: 'FL', to: 'lamp', metres: 1}, 'tape-unknown-end', 'lamp is neither a point nor a plane'],
	[{from: 'wall:left', to: 'floor', metres: 1}, 'tape-planes-meet', 'meet in a corner'],
	[{from: 'FL', to: 'FR', metres: 0}, 'tape-zero', 'cannot stand in the same place'],
])('adjustNetwork gives a sentence to the reading %o', (reading, code, words) => {
	const profile = {...thorough(1), tape: [...thorough(1).tape!, reading]};
	const result = adjustNetwork(profile);
	const remark = result.remarks.find(one => one.code === code)!;
	expect(remark.kind).toBe('problem');
	expect(sentenceOf(remark, sayIn(profile))).toContain(words);
	expect(result.readings.at(-1)!.status).toBe('unusable');
});

test('adjustNetwork names a wall reading that is longer than the stated room, and keeps it out', () => {
	const profile = bareProfile(inventedPlaces, {widthMetres: 4.2, lengthMetres: 5.6});
	const read = thorough(1, profile);
	const index = indexOf(read, ['FR', 'wall:left']);
	const result = adjustNetwork(with_(read, {[index]: 1.5}));
	expect(result.suspects.map(suspect => suspect.index)).toEqual([index]);
	expect(result.remarks[0]).toMatchObject({kind: 'problem', code: 'tape-blunder', about: ['FR']});
});

test('adjustNetwork says that readings in one plane tell one coordinate', () => {
	const profile = withReadings(bareProfile(), [
		['FL', 'floor'],
		['FR', 'floor'],
		['FC', 'floor'],
		['sofa', 'floor'],
	]);
	const result = adjustNetwork(profile);
	expect(result.remarks.find(({code}) => code === 'tape-one-plane')!.facts).toEqual({plane: 'floor'});
	expect(result.points.find(({id}) => id === 'FL')!.status).toBe('undetermined');
});

test('adjustNetwork names both of two readings that contradict each other and asks to retake one first', () => {
	const profile = {
		...bareProfile(),
		tape: [
			{from: 'FL', to: 'sofa', metres: 3.44},
			{from: 'FL', to: 'sofa', metres: 3.14},
		],
	};
	const {suspects, remarks} = adjustNetwork(profile);
	expect(suspects).toHaveLength(1);
	expect([suspects[0]!.index, ...suspects[0]!.alternatives].sort()).toEqual([0, 1]);
	expect(sentenceOf(remarks[0]!, sayIn(profile))).toContain(
		'It is one of these two: Front left to Sofa middle, or',
	);
});

test('adjustNetwork finds every place again from exact readings', () => {
	const {points, room, globalTest} = adjustNetwork(thorough());
	for (const {id, at: found} of points) expect(distance(found, inventedPlaces[id]!)).toBeLessThan(1e-5);
	expect(room.widthMetres).toBeCloseTo(inventedSize[0], 5);
	expect(room.lengthMetres).toBeCloseTo(inventedSize[1], 5);
	expect(globalTest!.sumOfSquares).toBeLessThan(1e-3);
});

test('adjustNetwork places a speaker by the seat’s distance alone only as far as that goes, and names what fixes it', () => {
	const profile = withReadings(
		bareProfile(),
		[...thoroughEnds(bareProfile()).filter(([from, to]) => from !== 'FL' && to !== 'FL'), ['FL', 'sofa']],
		{seed: 2},
	);
	const result = adjustNetwork(profile);
	const open = result.undetermined.find(({id}) => id === 'FL')!;
	expect(open.status).toBe('undetermined');
	expect(open.missing.map(({to}) => to).sort()).toEqual(['floor', 'wall:left']);
	const fixed = withReadings(
		profile,
		open.missing.map(({from, to}): Ends => [from, to]),
		{seed: 3},
	);
	expect(at(fixed, 'FL').status).not.toBe('undetermined');
	expect(distance(at(fixed, 'FL').at, inventedPlaces.FL!)).toBeLessThan(0.05);
});

test('adjustNetwork with distances alone holds the drawing by conventions and keeps every distance', () => {
	const ids = Object.keys(inventedPlaces).filter(id => id !== 'screen');
	const ends = ids.flatMap((a, index) => ids.slice(0, index).map((b): Ends => [a, b]));
	const profile = withReadings(bareProfile(), ends);
	const result = adjustNetwork(profile);
	expect(result.conventions).toHaveLength(6);
	expect(result.remarks.some(({code}) => code === 'tape-free')).toBe(true);
	const place = (id: string) => result.points.find(point => point.id === id)!.at;
	for (const {from, to, metres} of profile.tape!)
		expect(Math.abs(distance(place(from), place(to)) - metres)).toBeLessThan(1e-5);
	// Left and right follow the names, not the accident of the start.
	expect(place('FL')[0]).toBeLessThan(place('FR')[0]);
	expect(place('LS')[0]).toBeLessThan(place('RS')[0]);
	expect(place('LS')[1]).toBeGreaterThan(place('FL')[1]);
});

test('adjustNetwork tells two parts that nothing ties together', () => {
	const profile = withReadings(
		bareProfile(),
		[
			...thoroughEnds(bareProfile()).filter(pair => !pair.some(id => ['LS', 'RS'].includes(id))),
			['LS', 'RS'],
		],
		{seed: 4},
	);
	const result = adjustNetwork(profile);
	const remark = result.remarks.find(({code}) => code === 'tape-apart')!;
	expect(remark.about).toEqual(['LS', 'RS']);
	expect(result.points.find(({id}) => id === 'FL')!.status).toBe('determined');
});

test('adjustNetwork lets the channel’s side decide between mirror images, and says so', () => {
	// FL by its height and distances to two points on the room's middle line: left and right fit alike.
	const kept = thoroughEnds(bareProfile()).filter(pair => !pair.includes('FL'));
	const profile = withReadings(bareProfile(), [...kept, ['FL', 'floor'], ['FL', 'sofa'], ['FL', 'FC']], {
		seed: 5,
	});
	const result = adjustNetwork(profile);
	const point = result.points.find(({id}) => id === 'FL')!;
	// Four sigmas of two readings of 16 mm that cross at a right angle; the image is 2.5 m away.
	expect(distance(point.at, inventedPlaces.FL!)).toBeLessThan(0.1);
	expect(point).toMatchObject({status: 'undetermined', isChecked: false, assumedBy: 'side'});
	expect(
		result.remarks.find(({code, about}) => code === 'tape-mirror-side' && about[0] === 'FL'),
	).toBeDefined();
});

test('adjustNetwork lets the room decide where a mirror image is behind a wall', () => {
	// LS by height and two points on a line along the left wall: the image is 0.7 m outside.
	const places = {...inventedPlaces, FL: [0.45, 0.4, 1] as Vector, sub1: [0.45, 2.5, 0.25] as Vector};
	const bare = bareProfile(places);
	const kept = thoroughEnds(bare).filter(pair => !pair.includes('LS'));
	const profile = withReadings(bare, [...kept, ['LS', 'floor'], ['LS', 'FL'], ['LS', 'sub1']], {
		seed: 6,
		places: {...places, LS: [1.2, 4.3, 1.25]},
	});
	const result = adjustNetwork(profile);
	// The two points are nearly in line with it, so that it is known across that line to 8 cm; its image is 1.5 m away.
	expect(Math.abs(result.points.find(({id}) => id === 'LS')!.at[0] - 1.2)).toBeLessThan(0.3);
	expect(
		result.remarks.find(({code, about}) => code === 'tape-mirror-room' && about[0] === 'LS'),
	).toBeDefined();
});

test('adjustNetwork measures to a sloped ceiling as to a plane', () => {
	const room = {
		ceiling: {
			kind: 'sloped' as const,
			between: 'wall:left-wall:right' as const,
			heightsMetres: [2.5, 3.1] as [number, number],
		},
	};
	const bare = bareProfile(inventedPlaces, room);
	const ends = thoroughEnds(bare).filter(
		([from, to]) => from !== 'floor' && !(from.startsWith('Tp') && to === 'floor'),
	);
	const profile = withReadings(bare, [...ends, ['TpSiL', 'ceiling'], ['TpSiR', 'ceiling']]);
	const result = adjustNetwork(profile);
	for (const id of ['TpSiL', 'TpSiR'])
		expect(distance(result.points.find(point => point.id === id)!.at, inventedPlaces[id]!)).toBeLessThan(
			1e-4,
		);
});

test('adjustNetwork does not depend on where the readings’ ends stand or in which order they were taken', () => {
	const base = thorough(8);
	const expected = adjustNetwork(base);
	fc.assert(
		fc.property(
			fc.shuffledSubarray(base.tape!, {minLength: base.tape!.length}),
			fc.boolean(),
			(tape, turns) => {
				const turned = turns ? tape.map(one => ({...one, from: one.to, to: one.from})) : tape;
				const found = adjustNetwork({...base, tape: turned});
				for (const [index, point] of found.points.entries())
					expect(distance(point.at, expected.points[index]!.at)).toBeLessThan(1e-6);
			},
		),
		{seed: 11, numRuns: 12},
	);
});

test('adjustNetwork moves with the room: shifted readings give shifted places', () => {
	const base = thorough(9);
	const shift = 0.37;
	const near = new Set(['wall:left']);
	const moved = {
		...base,
		tape: base.tape!.map(one => ({
			...one,
			sigmaMetres: 0.003,
			metres: one.metres + (near.has(one.to) || one.from === 'wall:left' ? shift : 0),
		})),
	};
	const fixed = {...base, tape: base.tape!.map(one => ({...one, sigmaMetres: 0.003}))};
	const a = adjustNetwork(fixed);
	const b = adjustNetwork(moved);
	for (const [
		index,
		{
			at: [x, y, z],
		},
	] of a.points.entries())
		expect(distance(b.points[index]!.at, [x + shift, y, z])).toBeLessThan(1e-6);
	expect(b.globalTest!.sumOfSquares).toBeCloseTo(a.globalTest!.sumOfSquares, 5);
});

test('adjustNetwork is its own mirror image when left and right change places everywhere', () => {
	const swap = (end: string) =>
		({
			'wall:left': 'wall:right',
			'wall:right': 'wall:left',
			FL: 'FR',
			FR: 'FL',
			LS: 'RS',
			RS: 'LS',
			TpSiL: 'TpSiR',
			TpSiR: 'TpSiL',
		})[end] ?? end;
	const base = thorough(10);
	const a = adjustNetwork(base);
	const b = adjustNetwork({
		...base,
		tape: base.tape!.map(one => ({...one, from: swap(one.from), to: swap(one.to)})),
	});
	const width = a.room.widthMetres!;
	expect(b.room.widthMetres).toBeCloseTo(width, 6);
	for (const {
		id,
		at: [x, y, z],
	} of a.points) {
		expect(distance(b.points.find(point => point.id === swap(id))!.at, [width - x, y, z])).toBeLessThan(1e-5);
	}
});
