import {expect, test} from 'vitest';
import type {SettingsSet} from '../../../../source/profile/types.ts';
import {inForceBefore} from '../../../../source/ui/walk/dialIn/inForceBefore.ts';
import {exampleProfile, foundSet} from './exampleProfile.ts';

const solved = (id: string, trimDb: number, dialledIn: string[]): SettingsSet => ({
	id,
	origin: 'solved',
	channels: {FL: {trimDb: {stepped: trimDb}}, FR: {trimDb: {stepped: trimDb}}},
	dialledIn,
});
const fresh = solved('fresh', 9, []);

test('inForceBefore knows nothing when there are no earlier sets', () => {
	const standing = inForceBefore(exampleProfile({settings: []}), fresh);
	expect(standing.channel('FL')).toBeUndefined();
	expect(standing.masterVolumeDb).toBeUndefined();
});

test('inForceBefore gives what was found before the round', () => {
	const standing = inForceBefore(exampleProfile(), fresh);
	expect(standing.channel('FL')).toEqual(foundSet.channels.FL);
	expect(standing.masterVolumeDb).toBe(-20);
});

test('inForceBefore takes a solved set only where it was ticked', () => {
	const profile = exampleProfile({settings: [foundSet, solved('set1', 3, ['FL'])]});
	const standing = inForceBefore(profile, fresh);
	expect(standing.channel('FL')).toEqual({trimDb: {stepped: 3}});
	expect(standing.channel('FR')).toEqual(foundSet.channels.FR);
});

test('inForceBefore looks only at sets before the one asked about', () => {
	const first = solved('set1', 3, ['FL']);
	const profile = exampleProfile({settings: [foundSet, first, solved('set2', 5, ['FL'])]});
	expect(inForceBefore(profile, first).channel('FL')).toEqual(foundSet.channels.FL);
});
