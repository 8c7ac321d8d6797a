import {expect, test} from 'vitest';
import {netRun} from './surveying.ts';
import {tapeBars} from './truth/tapeShare.ts';
import {bareRoom} from './world.ts';

test('tape nets held to a centimetre accuse nobody, and a foot in a finished round is noticed', () => {
	const runs = [0, 1, 2, 3].map(index => netRun(bareRoom('building', index)));
	// Four nets: more than one accused, or more than one foot unnoticed, would be a surprise at 5 and 90 % (1.4 and 5 %).
	expect(runs.filter(({isAccused}) => isAccused).length).toBeLessThanOrEqual(1);
	expect(runs.filter(({foot}) => foot.isNoticed).length).toBeGreaterThanOrEqual(3);
	expect(tapeBars(runs)[0]!.share.of).toBe(4);
});
