import {expect, test} from 'vitest';
import type {Profile} from '../../../source/profile/types.ts';
import {diffMarkdown, diffText} from '../../../source/report/diff/text.ts';
import {diffProfiles} from '../../../source/study/comparison/diff/diffProfiles.ts';
import {arrange, usualArrangement} from '../../study/comparison/diff/exampleRoom.ts';
import {exampleSay} from '../exampleSolution.ts';

const room = arrange(usualArrangement);
const later = arrange({
	...usualArrangement,
	speakers: usualArrangement.speakers.map(speaker => {
		if (speaker.id === 'LS') return {...speaker, metres: speaker.metres + 0.344};
		if (speaker.id === 'FC') return {...speaker, levelDb: speaker.levelDb - 2, lowLimitHertz: 40};
		return speaker;
	}),
});
const dated = (profile: Profile, name: string, date: string) => ({...profile, name, date});
const diff = diffProfiles(
	{...room, profile: dated(room.profile, 'Autumn', '2025-10-04')},
	{...later, profile: dated(later.profile, 'Spring', '2026-04-18')},
);
const options = {lengthUnit: 'm', say: exampleSay, isFull: false, width: 80} as const;

test('`diffText` shows the larger changes first, each setting with its reason', () => {
	expect(diffText(diff, options).split('\n')).toEqual([
		'Garden studio: Autumn (2025-10-04) → Spring (2026-04-18)',
		'',
		'Set differently',
		'  where          setting   before    after    change  why',
		'  Left surround  delay     2.8 ms   1.8 ms  −1.00 ms  distance',
		'  Front centre   trim     +1.0 dB  +3.0 dB   +2.0 dB  level',
		'',
		'Distances that changed',
		'  - Left surround: 0.34 m farther from Sofa middle (1.95 m → 2.29 m).',
		'',
		'Replaced or described anew',
		'  - Front centre: low limit 70 Hz → 40 Hz.',
		'',
		'Levels read',
		'  - Front centre at Sofa middle: −2.0 dB (73.9 → 71.9 dB), of it −2.0 dB not',
		'    from trim or volume.',
		'',
		'Notes',
		'  - The older profile stores no settings. What its readings ask for is compared',
		'    instead.',
		'  - The newer profile stores no settings. What its readings ask for is compared',
		'    instead.',
	]);
});

test('`diffText` shows every part on request', () => {
	const text = diffText(diff, {...options, isFull: true});
	expect(text).toContain('Left surround, delay: distance −1.00 ms.');
	expect(text).toContain('Front centre, trim: level at seat +2.00 dB.');
});

test('`diffText` keeps to 60 columns and says what is left out', () => {
	const lines = diffText(diff, {...options, width: 60}).split('\n');
	expect(Math.max(...lines.map(line => line.length))).toBeLessThanOrEqual(60);
});

test('`diffText` says when nothing differs', () => {
	expect(diffText(diffProfiles(room, room), options)).toContain('Nothing differs in the room');
});

test('`diffText` shows lengths in feet and inches where asked to', () => {
	expect(diffText(diff, {...options, lengthUnit: 'ft-in'})).toContain('1′ 1 1/2″ farther from Sofa middle');
});

test('`diffMarkdown` gives headings and tables, with bars in names escaped', () => {
	const named = {...diff, settings: diff.settings.map(change => ({...change, name: 'Left | right'}))};
	const lines = diffMarkdown(named, options).split('\n');
	expect(lines).toContain('## Set differently');
	expect(lines).toContain('| Left \\| right | delay | 2.8 ms | 1.8 ms | −1.00 ms | distance |');
	expect(lines).toContain('- Front centre: low limit 70 Hz → 40 Hz.');
});
