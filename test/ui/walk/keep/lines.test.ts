import {readFileSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {parseProfile} from '../../../../source/profile/file/parse.ts';
import type {Profile} from '../../../../source/profile/types.ts';
import {keepLines} from '../../../../source/ui/walk/keep/lines.ts';
import {nextOf} from '../../../../source/ui/walk/keep/next.ts';
import {factsOf, stopStatusOf} from '../../../../source/ui/walk/stops.ts';
import {den} from '../../rooms.ts';

/** An invented room, decided and typed in. */
function attic(): Profile {
	const path = join(import.meta.dirname, '../../../fixtures/attic-2026.json');
	const parsed = parseProfile(readFileSync(path), path);
	if (!parsed.ok) throw new Error('The demo does not parse.');
	return parsed.profile;
}

const textOf = (profile: Profile, columns = 80) =>
	keepLines(profile, columns, factsOf(profile))
		.map(({text}) => text.trim())
		.join(' ');

test('an empty profile tells what is missing and that Enter goes there', () => {
	expect(textOf(den())).toMatch(/Tape: 8 still needed.*Settings: nothing to type in yet.*Next: Tape/);
	expect(nextOf(den(), stopStatusOf(den())).promptId).toBeUndefined();
});

test('measured and undecided settings lead to Dial-in', () => {
	const measured = attic();
	const profile: Profile = {
		...measured,
		settings: measured.settings!.filter(({origin}) => origin !== 'solved'),
		meter: measured.meter!.filter(({round}) => round === 'first'),
	};
	expect(textOf(profile)).toMatch(/Settings: computed, not decided/);
	expect(nextOf(profile, stopStatusOf(profile)).promptId).toBe('dialIn');
});

test('settings are told as stale once a reading gives others', () => {
	const profile = attic();
	const moved = {
		...profile,
		tape: profile.tape!.map(reading =>
			reading.from === 'FL' || reading.to === 'FL' ? {...reading, metres: reading.metres + 0.5} : reading,
		),
	};
	expect(textOf(moved)).toMatch(
		/Settings: stale\. Decided on \d{4}-\d\d-\d\d; newer readings give others for .*Front left/,
	);
	expect(nextOf(moved, stopStatusOf(moved)).promptId).toBe('dialIn');
});

test('a second round tells its verdict', () => {
	expect(textOf(attic())).toMatch(/Proof: (met|missed)/);
});

test('lines fit the width, whatever the profile', () => {
	for (const profile of [den(), attic()])
		for (const columns of [40, 80, 160])
			for (const {text} of keepLines(profile, columns, factsOf(profile)))
				expect(text.length).toBeLessThanOrEqual(columns);
});
