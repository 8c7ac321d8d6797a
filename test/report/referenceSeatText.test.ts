import {expect, test} from 'vitest';
import {referenceSeatText} from '../../source/report/referenceSeatText.ts';

test('the reference seat is told by its name, once', () => {
	expect(referenceSeatText('Sofa middle')).toBe('Reference seat: Sofa middle');
	expect(referenceSeatText('Reference seat')).toBe('Reference seat');
});
