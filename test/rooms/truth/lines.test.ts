import {expect, test} from 'vitest';
import {lineBars, lineLines} from './lineShare.ts';
import {emptyTruth, tryRooms} from './run.ts';
import {percent} from './share.ts';

test('every line of a room with dipoles and upward-firing speakers is heard where and as it is', () => {
	const truth = emptyTruth();
	for (const _ of tryRooms(
		{shares: ['lines'], kits: ['known'], range: 'building', from: 0, count: 1},
		truth,
	));
	expect(truth.lines).toHaveLength(8);
	expect(new Set(truth.lines.map(({kind}) => kind))).toEqual(new Set(['plain', 'dipole', 'upward']));
	for (const {what, share, atLeast} of lineBars(truth.lines)) {
		// One of some 58 decay times may lie beyond its bound; of few lines none.
		const least = what.includes('T20 right') ? 96 : atLeast!;
		expect(percent(share), what).toBeGreaterThanOrEqual(least);
	}

	expect(lineLines(truth.lines).join('\n')).not.toMatch(/NaN|undefined|Infinity/);
}, 300_000);
