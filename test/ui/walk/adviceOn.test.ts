import {expect, test} from 'vitest';
import {adviceOn} from '../../../source/ui/walk/solution.ts';
import {exampleProfile} from './dialIn/exampleProfile.ts';

test('a sub that no entry brings to its level is to be turned at its own knob, as soon as it was read', () => {
	const profile = exampleProfile();
	expect(adviceOn(profile, 'sub1') ?? '').not.toContain('own level knob');
	const meter = profile.meter!.map(reading =>
		reading.source === 'sub1' ? {...reading, decibels: reading.decibels + 45} : reading,
	);
	expect(adviceOn({...profile, meter}, 'sub1')).toMatch(
		/Before anything else turn its own level knob down by about \d+ dB/,
	);
	// No other channel hears of it.
	expect(adviceOn({...profile, meter}, 'FL') ?? '').not.toContain('knob');
});
