import {expect, test} from 'vitest';
import {repeatFindings, valueOfRepeat} from '../../../../source/study/calibration/readings/advice.ts';
import {solve} from '../../../afresh.ts';
import {emptyRoom, level} from '../room.ts';

test('valueOfRepeat is nothing where the meter never errs', () => {
	expect(valueOfRepeat(0.2, 0.5, 0, 1)).toEqual({chance: 0, verdict: 'decides nothing'});
});

test('valueOfRepeat is about one half on the border between two steps', () => {
	// The other border is 0.5 away: 0.5 / (0.05 / √2) = 14 standard deviations.
	const value = valueOfRepeat(0.25, 0.5, 0.05, 1);
	expect(value.chance).toBeCloseTo(0.5, 3);
	expect(value.verdict).toBe('take again');
});

test('valueOfRepeat matches the normal law', () => {
	// One reading of σ = 0.5 dB: the mean of two moves by 0.5 / √2 = 0.3536 dB. From the middle of a 0.5 dB step that is
	// 0.25 / 0.3536 = 0.7071 standard deviations either way: 2 · 0.2398 = 0.4795.
	expect(valueOfRepeat(0, 0.5, 0.5, 1).chance).toBeCloseTo(0.4795, 3);
});

test('valueOfRepeat falls with every reading', () => {
	const chances = [1, 2, 3, 4, 5, 6].map(repeats => valueOfRepeat(0.05, 0.5, 0.4, repeats).chance);
	expect(chances).toEqual(chances.toSorted((a, b) => b - a));
	expect(valueOfRepeat(0.05, 0.5, 0.4, 6).verdict).toBe('decides nothing');
});

test('repeatFindings advises only after a repeat, since a quick round takes one of each', () => {
	const again = {chance: 0.48, verdict: 'take again'} as const;
	expect(repeatFindings('FL', again, 1)[0]).toMatchObject({kind: 'note'});
	expect(repeatFindings('FL', again, 2)).toEqual([
		{
			kind: 'advice',
			code: 'level-take-again',
			about: ['FL'],
			facts: {chance: 0.48},
		},
	]);
	expect(repeatFindings('FL', {chance: 0.2, verdict: 'optional'}, 2)).toEqual([]);
});

test('a channel read often enough in the middle of a step needs no more, one on the border does', () => {
	// FL and FC six times 75.0: 0.0 on the dot, and the middle for FR. FR at 75.25: right between −0.5 and 0.0.
	// For FL the others err by 0 and 0.25, middle 0.125, and the border is 0.125 away: a seventh reading moves it by
	// less than 0.3 / √42 = 0.046.
	const often = (id: string, decibels: number) => Array.from({length: 6}, () => level(id, decibels));
	const profile = emptyRoom({
		channels: [{id: 'FL'}, {id: 'FC'}, {id: 'FR'}],
		kit: {meterSigmaDb: 0.3},
		meter: [...often('FL', 75), ...often('FC', 75), level('FR', 75.2), level('FR', 75.3)],
	});
	const codes = solve(profile).channels.map(({remarks}) =>
		remarks.map(({code}) => code).filter(code => /again|nothing/.test(code)),
	);
	expect(codes[0]).toEqual(['level-decides-nothing']);
	expect(codes[2]).toEqual(['level-take-again']);
});
