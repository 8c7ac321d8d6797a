import {expect, test} from 'vitest';
import {componentsOf} from '../../../source/study/survey/components.ts';
import type {Observation} from '../../../source/study/survey/observations.ts';

// Ends are offsets into the state, three places a point.
const between = (a: number, b: number) => ({kind: 'points', from: a * 3, to: b * 3}) as Observation;
const toPlane = (a: number) => ({kind: 'plane', point: a * 3}) as Observation;

test('points are of one part where readings lead from one to the other', () => {
	const parts = componentsOf([between(0, 1), between(3, 4), between(1, 2)], 6);
	expect(parts[1]).toBe(parts[0]);
	expect(parts[2]).toBe(parts[0]);
	expect(parts[4]).toBe(parts[3]);
	expect(parts[3]).not.toBe(parts[0]);
	expect(parts[5]).toBe(-1);
});

test('two readings to the same wall join nothing, and a reading of the room touches no point', () => {
	const parts = componentsOf([toPlane(0), toPlane(1), {kind: 'planes'} as Observation], 3);
	expect(parts[0]).not.toBe(parts[1]);
	expect(Math.min(parts[0]!, parts[1]!)).toBeGreaterThanOrEqual(0);
	expect(parts[2]).toBe(-1);
});
