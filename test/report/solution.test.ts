import {readFileSync} from 'node:fs';
import {expect, test} from 'vitest';
import type {Profile} from '../../source/profile/types.ts';
import {cellWidth} from '../../source/report/fitCells.ts';
import {solutionText} from '../../source/report/solution.ts';
import {solve} from '../afresh.ts';

const demo = JSON.parse(
	readFileSync(new URL('../fixtures/attic-2026.json', import.meta.url), 'utf8'),
) as Profile;
const solution = solve(demo);

test('`solutionText` shows the stepped value of every channel and output', () => {
	const text = solutionText(demo, solution, {lengthUnit: 'm', width: 100});
	for (const {timing, trimDb} of solution.channels) {
		if (timing) expect(text).toContain(`${timing.stepped.toFixed(2)} m`);
		if (trimDb) expect(text).toContain(Math.abs(trimDb.stepped).toFixed(1));
	}

	for (const {id, delayMs} of solution.outputs) {
		const row = text.split('\n').find(line => line.startsWith(`${id}: `));
		expect(row).toContain(`${delayMs!.stepped.toFixed(1)} ms`);
	}
});

test('`solutionText` shows exact values and notes only when asked', () => {
	const plain = solutionText(demo, solution, {lengthUnit: 'm', width: 80});
	const exact = solution.channels[0]!.timing!.exact.toFixed(4);
	expect(plain).not.toContain(exact);
	expect(plain).not.toContain('\nNotes\n');
	expect(solutionText(demo, solution, {lengthUnit: 'm', width: 80, showsExact: true})).toContain(exact);
	expect(solutionText(demo, solution, {lengthUnit: 'm', width: 80, showsWhy: true})).toContain('\nNotes\n');
});

test('`solutionText` says which way to turn the master volume', () => {
	const text = (masterVolumeTurnDb: number) =>
		solutionText(demo, {...solution, masterVolumeTurnDb, masterVolumeDb: -20}, {lengthUnit: 'm', width: 80});
	expect(text(1.5)).toContain('Master volume: turn it up by 1.5 dB, to −20.0 dB.');
	expect(text(-0.5)).toContain('Master volume: turn it down by 0.5 dB, to −20.0 dB.');
	expect(text(0)).toContain('Master volume: leave it as it is.');
});

test('`solutionText` keeps to the width', () => {
	for (const width of [50, 80, 120]) {
		const lines = solutionText(demo, solution, {lengthUnit: 'ft-in', width, showsWhy: true}).split('\n');
		const wide = lines.filter(line => cellWidth(line) > width && !line.startsWith('Not shown'));
		expect(wide).toEqual([]);
	}
});
