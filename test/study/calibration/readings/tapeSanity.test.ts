import {expect, test} from 'vitest';
import {remarkOnTape} from '../../../../source/study/calibration/readings/tapeSanity.ts';
import {emptyRoom, tape} from '../room.ts';

const small = {
	name: 'Invented room',
	widthMetres: 4,
	lengthMetres: 5,
	ceiling: {kind: 'flat', heightMetres: 2.5},
} as const;

test('a likely distance gets no remark', () => {
	expect(remarkOnTape(emptyRoom({room: small}), tape('LS', 2.1))).toEqual([]);
	expect(remarkOnTape(emptyRoom(), tape('LS', 6))).toEqual([]);
});

test('a side surround 9 m away in a 5 m room cannot be', () => {
	const [remark] = remarkOnTape(emptyRoom({room: small}), tape('LS', 9));
	expect(remark).toEqual({
		kind: 'problem',
		code: 'tape-beyond-room',
		about: ['LS'],
		facts: {
			metres: 9,
			room: {lengthMetres: 5, diagonalMetres: expect.closeTo(Math.hypot(4, 5, 2.5), 9)},
			meant: {readIn: 'feet', metres: expect.closeTo(2.7432, 9)},
		},
	});
});

test('centimetres taken for metres are recognised', () => {
	const [remark] = remarkOnTape(emptyRoom({room: small}), tape('LS', 286));
	expect(remark!.facts).toMatchObject({meant: {readIn: 'centimetres', metres: 2.86}});
});

test('a room of unknown size still ends somewhere', () => {
	const [remark] = remarkOnTape(emptyRoom(), tape('LS', 16));
	expect(remark).toMatchObject({code: 'tape-beyond-room'});
	expect(remark!.facts).not.toHaveProperty('room');
});

test('a speaker in the ear is a slip', () => {
	expect(remarkOnTape(emptyRoom(), tape('LS', 0.21))[0]).toMatchObject({code: 'tape-too-short'});
	expect(remarkOnTape(emptyRoom(), {from: 'FL', to: 'wall:left', metres: 0.21})).toEqual([]);
});

test('a repeat that is just one foot off is named so', () => {
	const profile = emptyRoom({tape: [tape('FL', 3)]});
	const [remark] = remarkOnTape(profile, tape('FL', 3.3048));
	expect(remark).toMatchObject({
		kind: 'doubt',
		code: 'tape-far-from-repeats',
		facts: {metres: 3.3048, differenceMetres: expect.closeTo(0.3048, 9), repeats: 1, slip: 'one-foot'},
	});
});

test('the reading itself, already in the profile, is not its own repeat', () => {
	const reading = tape('FL', 3);
	expect(remarkOnTape(emptyRoom({tape: [reading]}), reading)).toEqual([]);
});

test('swapped digits beside the other side are asked about; at another seat sides differ by right', () => {
	const profile = emptyRoom({tape: [{from: 'middle', to: 'FR', metres: 2.24}]});
	const [remark] = remarkOnTape(profile, tape('FL', 2.42));
	expect(remark).toMatchObject({
		kind: 'doubt',
		code: 'tape-left-right',
		facts: {partner: 'FR', partnerMetres: 2.24, swappedMetres: 2.24},
	});
	expect(remarkOnTape(profile, tape('FL', 2.31))).toEqual([]);
	const seats = [...profile.seats, {id: 'side', name: 'Side'}];
	const beside = {...profile, seats, tape: [{from: 'side', to: 'FR', metres: 2.08}]};
	expect(remarkOnTape(beside, {...tape('FL', 2.92), from: 'side'})).toEqual([]);
});

test('a left speaker far from where the right one stands is asked about', () => {
	const profile = emptyRoom({tape: [{from: 'middle', to: 'FR', metres: 3}]});
	const [remark] = remarkOnTape(profile, tape('FL', 4));
	expect(remark).toEqual({
		kind: 'doubt',
		code: 'tape-left-right',
		about: ['FL'],
		facts: {metres: 4, partner: 'FR', partnerMetres: 3, slip: 'one-metre'},
	});
	expect(remarkOnTape(profile, tape('FL', 3.2))).toEqual([]);
});

test('digits are swapped as the tape shows them, whatever unit lengths are shown in', () => {
	// 9′ 4″ and 4′ 9″: feet for inches. In metres 2.8448 and 1.4478 are no swap of digits.
	const ask = (lengthUnit: 'm' | 'ft-in', tapeShownIn: 'm' | 'ft-in') =>
		remarkOnTape(
			emptyRoom({lengthUnit, kit: {tapeShownIn}, tape: [{from: 'middle', to: 'FR', metres: 1.4478}]}),
			tape('FL', 2.8448),
		)[0]!.facts;
	expect(ask('m', 'ft-in')).toMatchObject({swappedMetres: expect.closeTo(1.4478, 6)});
	expect(ask('ft-in', 'm')).not.toHaveProperty('swappedMetres');
});
