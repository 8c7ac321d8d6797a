import {expect, test} from 'vitest';
import {moved, readMoves} from '../../../source/study/placement/moves.ts';
import {ear, placedAt, screenAhead} from '../survey/exampleNetwork.ts';

test.each([
	['FL=left:0.11', [-0.11, 0, 0]],
	['FL=left:11cm,up:5cm', [-0.11, 0, 0.05]],
	['FL=forward:4in', [0, -0.1016, 0]],
	['FL=+0.10,0,-0.02', [0.1, 0, -0.02]],
	['FL=back:0.2,down:0.1,right:0.3', [0.3, 0.2, -0.1]],
] as const)('readMoves reads %s', (text, by) => {
	const read = readMoves([text], 'm');
	expect(read.ok).toBe(true);
	if (!read.ok) return;
	expect(read.moves[0]!.id).toBe('FL');
	for (const [axis, value] of by.entries()) expect(read.moves[0]!.by[axis]).toBeCloseTo(value, 12);
});

test.each([
	'FL',
	'FL=',
	'=left:1',
	'FL=left',
	'FL=sideways:1',
	'FL=left:soon',
	'FL=1,2',
	'FL=a=b',
	'FL=0,1,0,2',
])('readMoves explains what is wrong with %s', text => {
	const read = readMoves([text], 'm');
	expect(read).toMatchObject({ok: false});
	if (!read.ok) expect(read.why).toContain('Write NAME=left:LENGTH');
});

test('moved moves one thing and leaves the rest, and refuses what is fixed, unknown or unmeasured', () => {
	const {result} = placedAt(
		{sofa: ear, screen: screenAhead, FL: [1, 0.5, 1]},
		{channels: [{id: 'FL'}, {id: 'FR', fixed: true}, {id: 'FC'}]},
	);
	const after = moved(result, [
		{id: 'FL', by: [0.1, 0, 0]},
		{id: 'FL', by: [0, 0, 0.2]},
	]);
	expect(after.points.find(({id}) => id === 'FL')!.at.map(value => Math.round(value * 1e5) / 1e5)).toEqual([
		1.1, 0.5, 1.2,
	]);
	expect(after.points.find(({id}) => id === 'sofa')!.at).toEqual(
		result.points.find(({id}) => id === 'sofa')!.at,
	);
	expect(() => moved(result, [{id: 'lamp', by: [1, 0, 0]}])).toThrow(
		'lamp cannot be moved: there is no such thing here',
	);
	expect(() => moved(result, [{id: 'FR', by: [1, 0, 0]}])).toThrow(
		'Front right cannot be moved: the profile says that it is fixed',
	);
	expect(() => moved(result, [{id: 'FC', by: [1, 0, 0]}])).toThrow('its place is not measured yet');
});
