import {expect, test} from 'vitest';
import {degreesText} from '../../../source/report/placement/degreesText.ts';

test('degreesText writes a true minus and no minus nought', () => {
	expect([degreesText(-0.2), degreesText(-0.04, 1), degreesText(-12.6), degreesText(29.96, 1)]).toEqual([
		'0°',
		'0.0°',
		'−13°',
		'30.0°',
	]);
});
