import {Box, renderToString} from 'ink';
import {expect, test} from 'vitest';
import {withDecided} from '../../../../source/ui/walk/dialIn/decide.ts';
import {dialInPage} from '../../../../source/ui/walk/dialIn/dialInPage.tsx';
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
