import {expect, test} from 'vitest';
import {isPlane} from '../../source/profile/planes.ts';

test('isPlane tells what a tape is held against flat from points', () => {
	expect(['wall:left', 'wall:back', 'floor', 'ceiling'].every(isPlane)).toBe(true);
	expect(['screen', 'FL', 'sub1', 'wall', 'wall:'].some(isPlane)).toBe(false);
});
