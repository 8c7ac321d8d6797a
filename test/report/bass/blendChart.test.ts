import {expect, test} from 'vitest';
import {blendChart} from '../../../source/report/bass/blendChart.ts';
import {chartText} from '../../../source/report/chart.ts';
import type {BlendPairResult} from '../../../source/study/calibration/blend/blend.ts';
import {exampleProfile} from '../../ui/walk/dialIn/exampleProfile.ts';

const pair = {still: ['FC'], moved: ['sub1'], crossoverHertz: 80} as unknown as BlendPairResult;
const flat = (levelDb: number) => Float64Array.of(levelDb, levelDb, levelDb);
const curves = {
	frequenciesHz: Float64Array.of(20, 80, 320),
	stillDb: flat(-6),
	movedDb: flat(-7),
	nowDb: flat(-3),
	thenDb: flat(0),
};

test('blendChart names each side plainly and both sums, and marks the crossover', () => {
	const chart = blendChart(exampleProfile(), pair, curves, {columns: 80, rows: 14});
	expect(chart.series.map(({name}) => name)).toEqual(['Front centre', 'Subwoofer', 'both now', 'both then']);
	expect(chart).toMatchObject({fromHz: 20, toHz: 320, columns: 80, rows: 14});
	expect(chart.marks).toEqual([{frequencyHz: 80, label: '80 Hz'}]);
});

test('blendChart keeps the levels of its curves', () => {
	const words = chartText(blendChart(exampleProfile(), pair, curves, {columns: 80, rows: 14}));
	expect(words[0]).toContain('−6.0 dB at 63 Hz');
	expect(words[3]).toContain('0.0 dB at 63 Hz');
});
