import {renderToString} from 'ink';
import {expect, test} from 'vitest';
import {Chart} from '../../../source/ui/parts/chart.tsx';
import {readAloud} from '../screenReader.ts';

const points = [20, 40, 80, 160].map(frequencyHz => ({frequencyHz, levelDb: 70}));
const options = {series: [{name: 'Sub', points}], columns: 60, rows: 14, fromHz: 20, toHz: 160};

test('Chart draws its lines one for one', () => {
	const lines = renderToString(<Chart options={options} />, {columns: 60}).split('\n');
	expect(lines).toHaveLength(14);
	expect(lines.at(-1)).toContain('Sub');
});

test('Chart is read aloud as levels without a drawing', () => {
	const words = readAloud(<Chart options={options} />, 200);
	expect(words).toContain('Sub: 70.0 dB at 31.5 Hz');
	expect(words).not.toMatch(/[⠀-⣿]/);
});
