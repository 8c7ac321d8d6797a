import {renderToString} from 'ink';
import {expect, test} from 'vitest';
import {openHistory} from '../../../source/ui/screens/history.ts';
import {HistoryView} from '../../../source/ui/screens/historyView.tsx';
import type {HistoryScreen} from '../../../source/ui/screens/screen.ts';
import {memoryFiles} from '../memoryFiles.ts';
import {exampleProfile} from '../walk/dialIn/exampleProfile.ts';

const files = memoryFiles({
	old: exampleProfile({date: '2025-10-04', name: 'Autumn'}),
	now: exampleProfile({name: 'Spring'}),
});
const screen = openHistory('now', {files, now: () => new Date('2026-04-18T20:00:00Z')}) as HistoryScreen;
const draw = (columns: number) =>
	renderToString(<HistoryView screen={screen} size={{columns, rows: 24}} />, {columns});

test('the history of a room says which columns a narrow window has no room for', () => {
	expect(draw(120)).toMatch(/distance.*level dB.*trim dB/);
	expect(draw(120)).not.toContain('Hidden');
	const narrow = draw(40);
	expect(narrow).not.toMatch(/channel.*level dB/);
	expect(narrow).toMatch(/Hidden: no room for .*level\s+dB/s);
});
