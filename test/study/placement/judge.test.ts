import {expect, test} from 'vitest';
import {layoutOf} from '../../../source/profile/layouts.ts';
import {sightlines} from '../../../source/study/placement/angles.ts';
import {judgeLayout} from '../../../source/study/placement/judge.ts';
import type {Vector} from '../../../source/study/survey/vectors.ts';
import {ear, placedAt, screenAhead, towards} from '../survey/exampleNetwork.ts';

function judged(places: Readonly<Record<string, Vector>>) {
	const {profile, result} = placedAt({sofa: ear, screen: screenAhead, ...places});
	return judgeLayout(layoutOf(profile.channels.map(({id}) => id)), sightlines(result, 'sofa'), () => true);
}

test('judge has nothing to say of an empty list or of subs', () => {
	expect(judged({sub1: [0.5, 0.5, 0.25]})).toEqual([]);
});

test.each([
	[110, 0, 'nominal', 0],
	[104, 5, 'allowed', 0],
	[96, 0, 'outside', 4],
	[125, 0, 'outside', 5],
	[110, 20, 'outside', 5],
] as const)('judge calls a left surround at %i° and %i° up %s', (azimuth, elevation, verdict, excess) => {
	const [one] = judged({
		LS: towards(azimuth, elevation, 2),
		FL: towards(30, 0, 2),
		FC: towards(0, 0, 2),
	}).filter(({id}) => id === 'LS');
	expect(one!.verdict).toBe(verdict);
	expect(Math.max(one!.azimuth!.excessDegrees, one!.elevation.excessDegrees)).toBeCloseTo(excess, 3);
	expect(one!.isCertain).toBe(true);
});

test('judge flags a front more than five degrees off where no range is published', () => {
	const verdicts = [31.5, 34.9, 35.2].map(
		azimuth =>
			judged({FL: towards(azimuth, 0, 2), FR: towards(-30, 0, 2)}).find(({id}) => id === 'FL')!.verdict,
	);
	expect(verdicts).toEqual(['allowed', 'allowed', 'flagged']);
});

test('judge is not certain of an excess below twice its uncertainty', () => {
	const one = judged({LS: towards(99.95, 0, 2), FL: towards(30, 0, 2), FC: towards(0, 0, 2)}).find(
		({id}) => id === 'LS',
	)!;
	expect(one).toMatchObject({verdict: 'outside', isCertain: false});
});

test('judge mirrors the ranges for the right side', () => {
	const one = judged({RS: towards(-104, 0, 2), FL: towards(30, 0, 2), FC: towards(0, 0, 2)}).find(
		({id}) => id === 'RS',
	)!;
	expect(one.verdict).toBe('allowed');
});

test('judge is certain of nothing whose readings are not checked yet, the seat’s included', () => {
	const {profile, result} = placedAt({
		sofa: ear,
		screen: screenAhead,
		LS: towards(96, 0, 2),
		FL: towards(30, 0, 2),
		FC: towards(0, 0, 2),
	});
	const layout = layoutOf(profile.channels.map(({id}) => id));
	for (const unchecked of ['LS', 'sofa']) {
		const one = judgeLayout(layout, sightlines(result, 'sofa'), id => id !== unchecked).find(
			({id}) => id === 'LS',
		)!;
		expect(one).toMatchObject({verdict: 'outside', isCertain: false, isChecked: false});
	}
});
