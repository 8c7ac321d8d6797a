import {readFileSync} from 'node:fs';
import {expect, test} from 'vitest';
import type {Profile, Recording} from '../../../../source/profile/types.ts';
import {recordedWish} from '../../../../source/study/calibration/blend/recordedWish.ts';
import {solve} from '../../../afresh.ts';

const demo = JSON.parse(
	readFileSync(new URL('../../../fixtures/attic-2026.json', import.meta.url), 'utf8'),
) as Profile;

const arrivalsMs = new Map<string, number>(
	[...solve(demo).channels, ...solve(demo).subs].flatMap(({id, arrivalMs}) =>
		arrivalMs ? [[id, arrivalMs.value] as const] : [],
	),
);

function recordedWith(
	changes: ReadonlyArray<{subs: string[]; addedMs: number; isTurned: boolean}>,
	more: Partial<Recording> = {},
): Profile {
	const recording: Recording = {
		id: 'r1',
		file: 'evening.wav',
		sha256: 'a'.repeat(64),
		atSeconds: 1.3,
		seat: 'middle',
		round: 'first',
		inForce: 'decided',
		clockPpm: -35,
		blend: {groups: changes.map(change => ({...change})), gainDb: 2.1},
		...more,
	};
	return {...demo, recordings: [recording]};
}

const asIs = [
	{subs: ['sub1'], addedMs: 0, isTurned: false},
	{subs: ['sub2'], addedMs: 0, isTurned: false},
];

test('without recordings, or with settings that nobody knows, there is no wish', () => {
	expect(recordedWish(demo, arrivalsMs)).toBeUndefined();
	expect(recordedWish(recordedWith(asIs, {inForce: 'never stored'}), arrivalsMs)).toBeUndefined();
	expect(recordedWish(recordedWith(asIs, {setAside: true}), arrivalsMs)).toBeUndefined();
});

test('what was added to a sub comes on top of how it stood, and a turned one changes its sign', () => {
	const stood = recordedWish(recordedWith(asIs), arrivalsMs)!;
	const wish = recordedWish(
		recordedWith([
			{subs: ['sub1'], addedMs: 3, isTurned: false},
			{subs: ['sub2'], addedMs: -1.5, isTurned: true},
		]),
		arrivalsMs,
	)!;
	const later = (id: string) => wish.subs.get(id)!.laterMs - stood.subs.get(id)!.laterMs;
	expect(later('sub1')).toBeCloseTo(3, 9);
	expect(later('sub2')).toBeCloseTo(-1.5, 9);
	expect(wish.subs.get('sub1')!.isInverted).toBe(stood.subs.get('sub1')!.isInverted);
	expect(wish.subs.get('sub2')!.isInverted).toBe(!stood.subs.get('sub2')!.isInverted);
	expect(wish.recorded).toEqual({gainDb: 2.1, isVerified: false});
});

test('recorded upright where the settings found turn the subs: upright is a wish, not what stands anyway', () => {
	const asDistances = recordedWith(asIs, {inForce: 'distances'});
	const [set] = asDistances.settings!.filter(({id}) => id === 'distances');
	// Receiver and outputs as distances have them to the hundredth, so that steps leave nothing.
	const exact = {
		...set!,
		channels: Object.fromEntries(
			Object.entries(set!.channels).map(([id, {distanceMetres, ...rest}]) => [
				id,
				{...rest, distanceMetres: {...distanceMetres!, stepped: distanceMetres!.exact!}},
			]),
		),
		outputs: Object.fromEntries(
			Object.entries(set!.outputs!).map(([id, {delayMs, ...rest}]) => [
				id,
				{...rest, delayMs: {...delayMs!, stepped: delayMs!.exact!}},
			]),
		),
	};
	const withFound = (polarityInverted: boolean): Profile => ({
		...asDistances,
		settings: asDistances.settings!.map(one =>
			one.id === 'distances'
				? exact
				: one.id === 'found'
					? {
							...one,
							outputs: Object.fromEntries(
								Object.entries(one.outputs!).map(([id, rest]) => [id, {...rest, polarityInverted}]),
							),
						}
					: one,
		),
	});
	expect(recordedWish(withFound(false), arrivalsMs)).toBeUndefined();
	expect(recordedWish(withFound(true), arrivalsMs)?.inverted).toBe(false);
});

test('solve enters what the recordings ask for: the outputs stand apart by it within their steps', () => {
	const apart = (profile: Profile) => {
		const [first, second] = solve(profile).outputs;
		return second!.delayMs!.stepped - first!.delayMs!.stepped;
	};
	const moved = recordedWith([
		{subs: ['sub1'], addedMs: 0, isTurned: false},
		{subs: ['sub2'], addedMs: 2, isTurned: false},
	]);
	// Outputs go in tenths of a millisecond.
	expect(Math.abs(apart(moved) - apart(recordedWith(asIs)) - 2)).toBeLessThanOrEqual(0.1 + 1e-9);
});

test('one more playing that finds the fronts softer puts everything back', () => {
	const points = (db: number) => ({levelsDb: new Array(250).fill(db), phasesDegrees: new Array(250).fill(0)});
	const response = (recording: string, source: string, bassDb: number) => ({
		source,
		seat: 'middle',
		part: 'all' as const,
		recording,
		sha256: 'b'.repeat(64),
		levelDb: 0,
		points: points(bassDb),
	});
	const withVerdict = (afterDb: number): Profile => {
		const profile = recordedWith([{subs: ['sub1', 'sub2'], addedMs: 3, isTurned: false}]);
		const found = profile.settings!.find(({id}) => id === profile.recordings![0]!.inForce)!;
		// The blend dialled in: what stood, and both outputs 3 ms later.
		const tried = {
			...found,
			id: 'tried',
			outputs: Object.fromEntries(
				Object.entries(found.outputs!).map(([id, {delayMs, ...rest}]) => [
					id,
					{...rest, delayMs: {stepped: delayMs!.stepped + 3}},
				]),
			),
		};
		const later: Recording = {...profile.recordings![0]!, id: 'r2', inForce: 'tried', round: 'proof'};
		const {blend: _, ...plain} = later;
		return {
			...profile,
			settings: [...profile.settings!, tried],
			recordings: [...profile.recordings!, plain as Recording],
			responses: ['FL', 'FR'].flatMap(id => [response('r1', id, 0), response('r2', id, afterDb)]),
		};
	};
	expect(recordedWish(withVerdict(-1), arrivalsMs)).toBeUndefined();
	expect(recordedWish(withVerdict(1.4), arrivalsMs)!.recorded).toEqual({
		gainDb: expect.closeTo(1.4, 9),
		isVerified: true,
	});
});
