import {expect, test} from 'vitest';
import {blendLines} from '../../../source/report/hearing/text.ts';
import type {ProfileBlend} from '../../../source/study/hearing/profileBlend.ts';
import {eveningProfile} from '../../study/hearing/simulated/evening.ts';

const evening = eveningProfile();
/** A profile in metres whose receiver is set in feet, in steps of a tenth. */
const profile = {
	...evening,
	lengthUnit: 'm',
	receiver: {
		...evening.receiver!,
		timing: {
			kind: 'distance',
			shownIn: 'ft',
			stepMetres: 0.03048,
			minimumMetres: 0,
			maximumMetres: 18,
			speedOfSoundMetresPerSecond: 343,
		},
	},
} as const;

const blend = (change: Partial<ProfileBlend['groups'][number]>) =>
	({
		gainDb: 2.1,
		by: 'change',
		fronts: [{channel: 'FL', gainDb: 2.1}],
		groups: [{subs: ['sub1'], box: 'receiver', at: 'LFE1', addedMs: 2, isTurned: false, ...change}],
	}) as unknown as ProfileBlend;

test('what a recording asks for is told as the box shows it: in the receiver’s own unit, whatever tapes are read in', () => {
	// A foot is 0.3048 m, exact: 10.0 and 12.3 ft.
	const told = blendLines(profile, blend({entry: 'distance', from: 3.048, to: 3.749_04}), 200).join('\n');
	expect(told).toContain('distance 12.3 ft instead of 10.0 ft');
	const delay = blendLines(profile, blend({entry: 'delay', from: 0, to: 2.000_000_1}), 200).join('\n');
	expect(delay).toMatch(/delay 2\.0+ ms instead of 0\.0+ ms/);
});
