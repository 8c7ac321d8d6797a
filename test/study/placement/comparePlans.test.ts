import {expect, test} from 'vitest';
import {comparePlans} from '../../afresh.ts';
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

test('comparePlans tells each move along the axes that help to see it, and where the thing stands now', () => {
	const [move] = comparePlans(before, after, one).change.moved;
	expect(move).toMatchObject({
		id: 'FL',
		steps: [{axis: 'across', metres: expect.closeTo(0.5, 3)}],
		places: [{from: 'wall:left', metres: expect.closeTo(1.5, 3)}],
	});
});

test('comparePlans draws no trail from another room', () => {
	const {newer, sameRoom} = comparePlans(before, after, {matches: [], sameRoom: false});
	expect(newer.points.some(point => point.before)).toBe(false);
	expect(sameRoom).toBe(false);
});
