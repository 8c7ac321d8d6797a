import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {tapePrompts} from '../../../../source/ui/walk/tape/tape.ts';
import {den} from '../../rooms.ts';

const at = {takenAt: '2026-04-18T20:00:00.000Z'};
const promptOf = (profile: Profile, id = 'tape:FL:seat1') =>
	tapePrompts(profile).find(prompt => prompt.id === id)!;

function taken(profile: Profile, text: string, correcting?: number): Profile {
	const result = promptOf(profile).take(profile, text, {...at, correcting});
	if (result.kind !== 'taken') throw new Error(`${text}: ${result.kind}`);
	return result.next;
}

test('a second reading is added beside the first, not put in its place', () => {
	const profile = taken(taken(den(), '9-4'), '9-4 1/4');
	expect(profile.tape).toHaveLength(2);
	expect(promptOf(profile).values).toEqual(['9′ 4″', '9′ 4 1/4″']);
});

test('a correction replaces just the reading that was picked', () => {
	const profile = taken(taken(taken(den(), '9-4'), '9-5'), '9-6', 0);
	expect(promptOf(profile).values).toEqual(['9′ 6″', '9′ 5″']);
});

test('a reading taken with the tape the other way round belongs to the same question', () => {
	const profile = den({tape: [{from: 'seat1', to: 'FL', metres: 2.8448}]});
	expect(promptOf(profile).values).toEqual(['9′ 4″']);
});

test('a reading that is set aside stays in the file, and the question is open again', () => {
	const profile = taken(den(), '9-4');
	const aside = promptOf(profile).setAside!(profile, 0);
	expect(aside.tape).toMatchObject([{from: 'FL', setAside: true}]);
	expect(promptOf(aside)).toMatchObject({isAnswered: false, values: ['9′ 4″ (set aside)']});
	expect(promptOf(promptOf(aside).setAside!(aside, 0)).isAnswered).toBe(true);
});

test('bare numbers are read in the unit of the profile, others in their own', () => {
	expect(taken(den({lengthUnit: 'm'}), '2,86').tape![0]!.metres).toBe(2.86);
	expect(taken(den({lengthUnit: 'cm'}), '286').tape![0]!.metres).toBe(2.86);
	// The international foot: 9 ft is 2.7432 m, exact.
	expect(taken(den(), '9').tape![0]!.metres).toBeCloseTo(2.7432, 12);
	expect(taken(den(), '2.86m').tape![0]!.metres).toBe(2.86);
});

test('what the tape cannot have shown is asked about or refused', () => {
	const profile = den();
	expect(promptOf(profile).take(profile, '9-14', at).kind).toBe('ask');
	expect(promptOf(profile).take(profile, 'abc', at).kind).toBe('no');
});

test('a distance beyond the taped room is doubted: nine metres in a five metre room', () => {
	const tape = [
		{from: 'wall:left', to: 'wall:right', metres: 4},
		{from: 'wall:front', to: 'wall:back', metres: 5},
	];
	const profile = den({lengthUnit: 'm', tape});
	expect(promptOf(profile).take(profile, '9', at)).toMatchObject({
		kind: 'taken',
		doubt: expect.stringContaining('9.00 m'),
	});
	expect(promptOf(profile).take(profile, '4.5', at)).toMatchObject({kind: 'taken', doubt: undefined});
});

test('overhead speakers carry the ladder caution, the others do not', () => {
	expect(promptOf(den(), 'tape:TpSiL:seat1').caution).toContain('Ladder');
	expect(promptOf(den()).caution).toBeUndefined();
});
