import {expect, test} from 'vitest';
import {comparePlans} from '../../../source/study/placement/comparePlans.ts';
import {ear, placedAt, screenAhead} from '../survey/exampleNetwork.ts';

const before = placedAt({sofa: ear, screen: screenAhead, FL: [1, 0.5, 1]}).profile;
const after = placedAt({sofa: ear, screen: screenAhead, FL: [1.5, 0.5, 1]}).profile;
const one = {matches: [], sameRoom: true};

test('comparePlans gives what moved the place where it stood, and nothing else', () => {
	const {newer, older} = comparePlans(before, after, one);
	expect(newer.points.find(({id}) => id === 'FL')!.before!.x).toBeCloseTo(1, 3);
	expect(newer.points.filter(point => point.before)).toHaveLength(1);
	expect([...newer.points, ...older.points].some(({aim}) => aim)).toBe(false);
});

test('comparePlans tells the move in the unit asked for', () => {
	expect(comparePlans(before, after, one).lines[0]).toContain('Front left: 0.50 m to the right');
	expect(comparePlans(before, after, one, 'cm').lines[0]).toContain('Front left: 50');
});

test('comparePlans draws no trail from another room and says that the rooms differ', () => {
	const {newer, lines} = comparePlans(before, after, {matches: [], sameRoom: false});
	expect(newer.points.some(point => point.before)).toBe(false);
	expect(lines[0]).toContain('The rooms differ');
});
