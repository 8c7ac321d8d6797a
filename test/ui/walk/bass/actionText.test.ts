import {expect, test} from 'vitest';
import {actionText} from '../../../../source/ui/walk/bass/actionText.ts';
import {exampleProfile} from '../dialIn/exampleProfile.ts';

test('actionText tells only the change where it is not known what stands', () => {
	const action = {box: 'receiver', about: 'LFE1', what: 'distance', change: -0.35} as const;
	expect(actionText(exampleProfile(), action)).toBe(
		'receiver, Low frequency effects 1: distance 0.35 m less than what stands',
	);
});

test('actionText tells both values with the steps of the box', () => {
	const action = {box: 'processor', about: 'A', what: 'delay', from: 0.52, to: 1.1, change: 0.58} as const;
	expect(actionText(exampleProfile(), action)).toBe('bass processor, output A: delay 0.52 ms to 1.1 ms');
});

test('actionText tells where polarity is turned', () => {
	expect(actionText(exampleProfile(), {box: 'sub', about: 'sub1', what: 'polarity'})).toBe(
		'sub, Subwoofer: invert the polarity',
	);
});
