import {expect, test} from 'vitest';
import {nearestWords} from '../../source/commands/nearest.ts';

const commands = ['solve', 'check', 'walk', 'diff', 'list', 'new', 'copy', 'completion'];

test.each([
	['', []],
	['solve', ['solve']],
	['slove', ['solve']],
	['SOLVE', ['solve']],
	['comp', ['copy', 'completion']],
	['nwe', ['new']],
	['measure', []],
])('`nearest` finds for “%s” the words %j', (word, found) => {
	expect(nearestWords(word, commands)).toEqual(found);
});
