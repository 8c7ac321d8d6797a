import {expect, test} from 'vitest';
import {type FindingOf, finding} from '../../../source/profile/finding.ts';
import {headOf, sentenceOf} from '../../../source/report/said/said.ts';
import {sayIn} from '../../../source/report/said/say.ts';
import type {TypedFacts} from '../../../source/study/calibration/readings/facts.ts';

const named = {seats: [{id: 'seat', name: 'Sofa'}]};
const say = sayIn(named);
const said = (found: FindingOf<TypedFacts>) => sentenceOf(found, say);

test.each([
	[{levelDb: 7.42, meantDb: 74.2}, 'Front centre: 7.42 dB? Did you mean 74.2 dB?'],
	[{levelDb: 7420, meantDb: 74.2}, 'Front centre: 7420 dB? Did you mean 74.2 dB?'],
	[{levelDb: -74.2, meantDb: 74.2}, 'Front centre: −74.2 dB? Did you mean 74.2 dB?'],
	[{levelDb: 2}, 'Front centre: 2 dB cannot be the level of a test signal. Read the meter again.'],
])('a slip of the pen is shown as typed: %o', (facts, text) => {
	expect(said(finding('problem', 'level-impossible', ['FC'], facts))).toBe(text);
});

test('a question at the head of a sentence has no full stop behind its mark', () => {
	const slip: FindingOf<TypedFacts> = finding('problem', 'level-impossible', ['FC'], {
		levelDb: 742,
		meantDb: 74.2,
	});
	expect(headOf(slip, say)).toBe('742 dB?');
	expect(said(slip)).not.toContain('?.');
});

test('a level is compared by signed difference, and one repeat is not called many', () => {
	const far = (differenceDb: number, repeats: number) =>
		said(finding('doubt', 'level-far-from-repeats', ['FR'], {levelDb: 73, differenceDb, repeats}));
	expect(far(-2, 1)).toBe(
		'Front right: 73.0 dB, 2.0 dB below its repeat. Take it once more with the meter on a stand.',
	);
	expect(far(2, 3)).toContain('2.0 dB above its repeats.');
	const facts = {levelDb: 55, differenceDb: -19.5, others: 2};
	expect(said(finding('doubt', 'level-far-from-others', ['FC'], facts))).toBe(
		'Front centre: 55.0 dB, 20 dB below the other channels. Is the signal on this channel, and at the same master volume? If so, keep it.',
	);
});

test('the background has no name before it and begins with a capital', () => {
	expect(said(finding('doubt', 'background-loud', [], {seat: 'seat', levelDb: 74}))).toBe(
		'Background at Sofa: 74.0 dB is loud for a room at rest. Was the test signal still on?',
	);
	expect(said(finding('problem', 'background-impossible', [], {levelDb: -3}))).toBe(
		'Background: −3.0 dB cannot be. Read the meter again with the noise off.',
	);
});

test.each([
	[8, '8 hours'],
	[4, '4 hours'],
	[2, '2.0 hours'],
	[1, '1.0 hours'],
	[0.25, '15 minutes'],
	[0.001, '1 minutes'],
])('%f h a day is said as %s, and what to do about it', (hours, time) => {
	const text = said(finding('note', 'loud', ['FC'], {levelDb: 90, hours}));
	expect(text).toContain(`Ears bear this level for about ${time} a day.`);
	expect(text).toContain('wear ear protection');
});

test('lengths are said in the reader’s unit, with what explains them', () => {
	const slip: FindingOf<TypedFacts> = finding('doubt', 'tape-far-from-repeats', ['FL'], {
		metres: 3.3528,
		differenceMetres: 0.3048,
		repeats: 1,
		middleMetres: 3.048,
		slip: 'one-foot',
	});
	expect(sentenceOf(slip, sayIn(named, 'ft-in'))).toBe(
		'Front left: 11′ 0″, 1′ 0″ longer than its repeat of 10′ 0″. That is just one foot. Measure it once more.',
	);
	const beyond = {metres: 9, room: {lengthMetres: 5, diagonalMetres: 6.873}};
	expect(
		said(
			finding('problem', 'tape-beyond-room', ['LS'], {...beyond, meant: {readIn: 'feet', metres: 2.7432}}),
		),
	).toBe(
		'Left surround: 9.00 m in a room 5.00 m long; no straight line in it exceeds 6.87 m. Was it read in feet? Then it is 2.74 m.',
	);
	expect(said(finding('problem', 'tape-beyond-room', ['LS'], {metres: 16}))).toBe(
		'Left surround: 16.00 m away, longer than a home room. Measure it again.',
	);
	const facts = {metres: 4, partner: 'FR', partnerMetres: 3} as const;
	expect(said(finding('doubt', 'tape-left-right', ['FL'], {...facts, slip: 'one-metre'}))).toBe(
		'Front left: 4.00 m, but Front right is at 3.00 m. That is just one metre. If they really stand that differently, keep it; else measure again.',
	);
	expect(said(finding('doubt', 'tape-left-right', ['FL'], {...facts, swappedMetres: 2.24}))).toContain(
		'Two swapped digits would make it 2.24 m.',
	);
});
