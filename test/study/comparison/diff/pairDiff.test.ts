import {expect, test} from 'vitest';
import {diffProfiles} from '../../../../source/study/comparison/diff/diffProfiles.ts';
import {solve} from '../../../afresh.ts';
import {apart, dialledIn, profileWith, walkedPair} from '../../calibration/blend/pairRoom.ts';

test('a delay that was verified between two subs is put down to the blend, and the parts add up', () => {
	const older = dialledIn(profileWith(), 'distances');
	const newer = dialledIn(walkedPair(older, apart), 'pair');
	const {settings} = diffProfiles(
		{profile: older, solution: solve(older)},
		{profile: newer, solution: solve(newer)},
	);
	const delay = settings.find(({setting}) => setting === 'delay')!;
	expect(delay.about).toBe('A');
	const amountOf = (cause: string) => delay.parts.find(part => part.cause === cause)?.amount ?? 0;
	// All of it but for what steps leave, 0.1 ms each.
	expect(Math.abs(amountOf('blend') - delay.change!)).toBeLessThan(0.1);
	expect(delay.parts.reduce((sum, {amount}) => sum + amount, 0)).toBeCloseTo(delay.change!, 9);
	expect(amountOf('unexplained')).toBe(0);
});
