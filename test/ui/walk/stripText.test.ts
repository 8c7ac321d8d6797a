import {expect, test} from 'vitest';
import type {StopStatus} from '../../../source/ui/walk/progress.ts';
import {stripText, stripWords} from '../../../source/ui/walk/stripText.ts';

const stops: StopStatus[] = [
	{id: 'room', name: 'Room', state: 'later', answered: 0, required: 0},
	{id: 'tape', name: 'Tape', state: 'open', answered: 2, required: 8},
	{id: 'keep', name: 'Keep', state: 'done', answered: 1, required: 1},
];

test('`stripText` tells in signs and words what is done and what is needed', () => {
	expect(stripText(stops, 'tape', 80)).toBe(' Room later  [Tape 2/8]  Keep ✓ ');
});

test('`stripText` drops words before stops, and far stops before the near ones', () => {
	expect(stripText(stops, 'tape', 26)).toBe(' Room [Tape 2/8] Keep ✓ ');
	expect(stripText(stops, 'room', 20)).toBe('[Room] Tape 2/8 ');
});

test('`stripWords` says where one stands and what is open', () => {
	expect(stripWords(stops, 'tape')).toBe('Stop Tape. Open: Tape, 6 needed.');
	expect(stripWords([stops[2]!], 'keep')).toBe('Stop Keep. All that is needed is answered.');
});

test('a stop that was missed is marked, and told in words', () => {
	const missed: StopStatus = {id: 'proof', name: 'Proof', state: 'missed', answered: 0, required: 0};
	expect(stripText([missed], 'keep', 80)).toBe(' Proof ! ');
	expect(stripWords([missed], 'proof')).toBe('Stop Proof. All that is needed is answered. Proof missed.');
});
