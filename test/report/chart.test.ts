import stringWidth from 'string-width';
import {describe, expect, test} from 'vitest';
import {drawChart} from '../../source/report/chart.ts';
import type {ChartOptions, ChartSeries} from '../../source/report/chartData.ts';

const grid = Array.from({length: 97}, (_, index) => 20 * 2 ** (index / 24));
const flat = (name: string, levelDb: number): ChartSeries => ({
	name,
	points: grid.map(frequencyHz => ({frequencyHz, levelDb})),
});
// Level of a 4th-order Linkwitz-Riley low-pass: 20 lg of 1 / (1 + (f / fc)⁴).
const lowPass: ChartSeries = {
	name: 'Sub',
	points: grid.map(frequencyHz => ({
		frequencyHz,
		levelDb: 75 - 20 * Math.log10(1 + (frequencyHz / 80) ** 4),
	})),
};
const draw = (changes: Partial<ChartOptions> = {}) =>
	drawChart({series: [lowPass], columns: 78, rows: 16, fromHz: 20, toHz: 320, ...changes});

test('drawChart says so when there is nothing to draw', () => {
	expect(draw({series: []})).toEqual(['No curves.']);
	expect(draw({series: [{name: 'Sub', points: []}]})[0]).toContain('Sub: no values');
});

test('drawChart answers in words when the range is not one', () => {
	expect(draw({fromHz: 0})[0]).toContain('Sub:');
	expect(draw({fromHz: 100, toHz: 50})[0]).toContain('Sub: no values');
});

describe.each([10, 30, 60, 78, 120, 160])('at %i columns', columns => {
	test.each([1, 6, 9, 16, 40])('drawChart stays inside %i rows', rows => {
		const lines = draw({
			columns,
			rows,
			series: [lowPass, flat('Mains with a long name', 70), flat('Both', 78)],
		});
		expect(lines.length).toBeLessThanOrEqual(rows);
		for (const line of lines) expect(stringWidth(line)).toBeLessThanOrEqual(columns);
	});
});

test('drawChart puts 80 Hz in the middle of 20 to 320 Hz', () => {
	const lines = draw({marks: [{frequencyHz: 80, label: 'X'}]});
	const left = lines[1]!.indexOf('⡇');
	const at = lines[0]!.indexOf('X');
	expect((at - left) / (78 - left)).toBeCloseTo(0.5, 1);
});

test('drawChart puts each level where its axis says', () => {
	// A flat curve at 70 dB of 60 to 80 dB lies in the row that is labelled 70.
	const lines = draw({series: [flat('Both', 70)], fromDb: 60, toDb: 80});
	const row = lines.findIndex(line => line.startsWith('70'));
	expect([...lines[row]!].filter(character => /[⠁-⣿]/.test(character)).length).toBeGreaterThan(60);
});

test('drawChart labels the frequencies 1, 2 and 5 of each decade', () => {
	const axis = draw({toHz: 20_000, series: [flat('Both', 70)]}).find(line => line.startsWith('Hz'))!;
	expect(axis.trim().split(/\s+/)).toEqual('Hz 20 50 100 200 500 1k 2k 5k 10k 20k'.split(' '));
});

test('drawChart tells series apart by letter and line', () => {
	const lines = draw({series: [lowPass, flat('Mains', 70), flat('Both', 78)]});
	expect(lines.at(-1)).toMatch(/^a \S+ Sub {3}b \S+ Mains {3}c \S+ Both$/);
	for (const letter of ['a', 'b', 'c']) {
		expect(
			lines.slice(0, -2).some(line => line.includes(letter)),
			letter,
		).toBe(true);
	}

	const samples = lines.at(-1)!.match(/[⠀-⣿]+/g);
	expect(new Set(samples).size).toBe(3);
});

test('drawChart leaves a gap where a level is not a number', () => {
	const points = grid.map((frequencyHz, index) => ({
		frequencyHz,
		levelDb: index > 40 && index < 60 ? Number.NaN : 70,
	}));
	const lines = draw({series: [{name: 'Sub', points}], fromDb: 60, toDb: 79});
	const whole = draw({series: [flat('Sub', 70)], fromDb: 60, toDb: 79});
	const dots = (text: readonly string[]) => text.join('').match(/[⠁-⣿]/g)!.length;
	expect(dots(lines)).toBeLessThan(dots(whole) - 5);
});

test('drawChart never stretches a wobble of tenths over the whole height', () => {
	const points = grid.map(frequencyHz => ({frequencyHz, levelDb: 72 + 0.1 * Math.sin(frequencyHz)}));
	const lines = draw({series: [{name: 'Sub', points}]});
	const labels = lines
		.map(line => /^ *(\d+) /.exec(line)?.[1])
		.filter(label => label !== undefined)
		.map(Number);
	expect(Math.max(...labels) - Math.min(...labels)).toBeGreaterThanOrEqual(8);
});
