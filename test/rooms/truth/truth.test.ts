import {expect, test} from 'vitest';
import {barsOf, truthText} from './print.ts';
import {emptyTruth, type TruthOptions, tryRooms} from './run.ts';
import {percent, type Share} from './share.ts';

const options: TruthOptions = {
	shares: ['blend', 'clean', 'tape', 'pair'],
	kits: ['known', 'hidden'],
	range: 'building',
	from: 0,
	count: 2,
};

/**
Whether a share of few runs would be a surprise for a tool that just reaches the bar: less than one in a thousand, by
the binomial distribution.
*/
function isSurprising({held, of}: Share, barPercent: number, isTooFew: boolean): boolean {
	const p = barPercent / 100;
	let chance = (1 - p) ** of;
	let upTo = 0;
	let below = 0;
	for (let count = 0; count <= of; count++) {
		if (count <= held) upTo += chance;
		if (count < held) below += chance;
		chance *= ((of - count) / (count + 1)) * (p / (1 - p));
	}

	return (isTooFew ? upTo : 1 - below) < 0.001;
}

test('a few rooms give no reason to doubt the bars that many rooms are held to', () => {
	const truth = emptyTruth();
	for (const _ of tryRooms(options, truth));
	expect(truth.blend).toHaveLength(4);
	expect(truth.tape).toHaveLength(2);
	expect(truth.pair).toHaveLength(4);
	expect(truth.proof.filter(({slip}) => !slip)).toHaveLength(8);
	for (const {what, share, atLeast, atMost} of barsOf(truth)) {
		if (atLeast !== undefined)
			expect(isSurprising(share, atLeast, true), `${what}: ${percent(share)} %`).toBe(false);
		if (atMost !== undefined && atLeast === undefined)
			expect(isSurprising(share, atMost, false), `${what}: ${percent(share)} %`).toBe(false);
	}

	const text = truthText(truth, options);
	expect(text).toMatch(/known +2 /);
	expect(text).not.toMatch(/NaN|undefined|Infinity/);
});

test('rooms give the same answer twice', () => {
	const [first, second] = [emptyTruth(), emptyTruth()];
	for (const truth of [first, second])
		for (const _ of tryRooms({...options, shares: ['blend'], kits: ['hidden'], count: 1}, truth));
	expect(second).toEqual(first);
});
