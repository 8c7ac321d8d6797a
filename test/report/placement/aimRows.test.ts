import {expect, test} from 'vitest';
import {aimRows, dotText} from '../../../source/report/placement/aimRows.ts';
import {judgePlacement} from '../../../source/study/placement/placement.ts';
import {ear, placedAt, screenAhead} from '../../study/survey/exampleNetwork.ts';

test('aimRows is empty when no speaker is placed', () => {
	const {profile, result} = placedAt({sofa: ear});
	expect(aimRows(judgePlacement(profile, result), id => id, 'm', 80)).toEqual([]);
});

test('aimRows tells turn, tilt, dot and the spot below an overhead, with the caution for the laser', () => {
	const {profile, result} = placedAt({
		sofa: ear,
		screen: screenAhead,
		FL: [1, 0.8, 1.1],
		TpFL: [1.6, 2.6, 2.5],
	});
	const text = aimRows(judgePlacement(profile, result), id => id, 'm', 90).join('\n');
	expect(text).toContain('never point it at eyes');
	expect(text).toMatch(/FL +27° to the right +0° (up|down) +back wall, 3\.60 m from left wall, 1\.10 m high/);
	expect(text).toMatch(
		/TpFL, firing straight down: spot on the floor, 1\.60 m from left wall, 2\.60 m from screen\s+wall; the ear is 47° off its axis\./,
	);
});

test('dotText names the surface and its two distances', () => {
	const dot = {
		surface: 'floor' as const,
		at: [1, 2, 0] as const,
		distances: [
			{from: 'wall:left' as const, metres: 1},
			{from: 'wall:back' as const, metres: 2.5},
		],
	};
	expect(dotText(dot, 'm')).toBe('floor, 1.00 m from left wall, 2.50 m from back wall');
});
