import {Box, renderToString} from 'ink';
import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {withDecided, withTick} from '../../../../source/ui/walk/dialIn/decide.ts';
import {dialInPage} from '../../../../source/ui/walk/dialIn/dialInPage.tsx';
import {situationOf} from '../../../../source/ui/walk/dialIn/situation.ts';
import {openPage} from '../../../../source/ui/walk/page.ts';
import {factsOf} from '../../../../source/ui/walk/stops.ts';
import {readAloud} from '../../screenReader.ts';
import {exampleProfile} from './exampleProfile.ts';

const profile = withDecided(exampleProfile(), '2026-04-18T10:00:00Z');
const view = (columns: number, height: number) =>
	dialInPage.view({profile, state: dialInPage.start(profile), columns, height, walk: factsOf(profile)});

test.each([60, 80, 120, 160])('the page keeps its lines whole at %i columns', columns => {
	const lines = renderToString(<Box>{view(columns, 17)}</Box>, {columns}).split('\n');
	expect(lines.length).toBeLessThanOrEqual(17);
	expect(lines.join('\n')).toContain('Front left');
});

test('the page is read aloud without drawn figures', () => {
	const words = readAloud(<Box>{view(80, 17)}</Box>, 120);
	expect(words).toMatch(/Front left +\d\.\d\d m +was 2\.80 m/);
	expect(words).not.toMatch(/[▀▄█]/);
});

test('the page names the keys of what it shows', () => {
	const open = openPage(dialInPage, dialInPage.start(profile));
	const keys = (subject: typeof profile) => open.keys(subject).map(([key]) => key);
	expect(keys(profile)).toEqual(['Enter', 'Space', 'w', '↑↓', '←→', 'l']);
	expect(keys(exampleProfile())).toEqual(['Enter']);
	expect(keys(exampleProfile({settings: [], tape: [], meter: []}))).toEqual([]);
});

test('Enter is named by what it does: it ticks a page, and goes on once all are ticked', () => {
	const open = openPage(dialInPage, dialInPage.start(profile));
	const enterOf = (subject: Profile) => open.keys(subject).find(([key]) => key === 'Enter')?.[1];
	expect(enterOf(profile)).toBe('page done');
	const situation = situationOf(profile);
	if (situation.kind !== 'decided') throw new Error('no set holds');
	const ticked = situation.items.reduce<Profile>((now, {id}) => withTick(now, 'set1', id, true), profile);
	expect(enterOf(ticked)).toBe('go on');
});
