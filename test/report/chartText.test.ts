import {expect, test} from 'vitest';
import {chartText} from '../../source/report/chartText.ts';

const range = {columns: 80, rows: 20, fromHz: 20, toHz: 320};

test('chartText says when there are no curves or no values', () => {
	expect(chartText({...range, series: []})).toEqual(['No curves.']);
	expect(chartText({...range, series: [{name: 'Sub', points: []}]})).toEqual([
		'Sub: no values from 20 Hz to 320 Hz.',
	]);
});

test('chartText gives levels at octave centres between points, and the extremes', () => {
	const points = [
		{frequencyHz: 40, levelDb: 60},
		{frequencyHz: 90, levelDb: 72},
		{frequencyHz: 250, levelDb: 66},
	];
	// 63 Hz lies lg(63/40)/lg(90/40) = 0.5602 of the way from 40 to 90 Hz: 60 + 0.5602 · 12 = 66.7 dB.
	// 125 Hz lies lg(125/90)/lg(250/90) = 0.3215 of the way from 90 to 250 Hz: 72 − 0.3215 · 6 = 70.1 dB.
	expect(chartText({...range, series: [{name: 'Sub', points}]})).toEqual([
		'Sub: 66.7 dB at 63 Hz, 70.1 dB at 125 Hz, 66.0 dB at 250 Hz, highest 72.0 dB at 90 Hz, lowest 60.0 dB at 40 Hz.',
	]);
});

test('chartText tells the marks', () => {
	const marks = [{frequencyHz: 80, label: 'crossover'}];
	expect(chartText({...range, series: [{name: 'Sub', points: []}], marks}).at(-1)).toBe(
		'Marked at 80 Hz: crossover.',
	);
});
