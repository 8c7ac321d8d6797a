import {expect, test} from 'vitest';
import {remarkOnTape} from '../../../../source/study/calibration/readings/sanity.ts';
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
	// √(4² + 5² + 2.5²) = 6.87 m.
	expect(remark).toMatchObject({kind: 'problem', code: 'tape-beyond-room', about: 'LS'});
	expect(remark!.text).toBe(
		'Left surround: 9.00 m in a room 5.00 m long; no straight line in it exceeds 6.87 m. Was it read in feet? Then it is 2.74 m.',
	);
});

test('centimetres taken for metres are recognised', () => {
	const [remark] = remarkOnTape(emptyRoom({room: small}), tape('LS', 286));
	expect(remark!.text).toContain('Was it read in centimetres? Then it is 2.86 m.');
});

test('a room of unknown size still ends somewhere', () => {
	expect(remarkOnTape(emptyRoom(), tape('LS', 16))[0]).toMatchObject({code: 'tape-beyond-room'});
});

test('a speaker in the ear is a slip', () => {
	expect(remarkOnTape(emptyRoom(), tape('LS', 0.21))[0]).toMatchObject({code: 'tape-too-short'});
	expect(remarkOnTape(emptyRoom(), {from: 'FL', to: 'wall:left', metres: 0.21})).toEqual([]);
});

test('a repeat that is just one foot off is named so, in the profile’s unit', () => {
	const profile = emptyRoom({lengthUnit: 'ft-in', tape: [tape('FL', 3)]});
	const [remark] = remarkOnTape(profile, tape('FL', 3.3048));
	expect(remark).toMatchObject({kind: 'doubt', code: 'tape-far-from-repeats'});
	expect(remark!.text).toContain('1′ 0″ longer than its repeat');
	expect(remark!.text).toContain('That is just one foot.');
});

test('the reading itself, already in the profile, is not its own repeat', () => {
	const reading = tape('FL', 3);
	expect(remarkOnTape(emptyRoom({tape: [reading]}), reading)).toEqual([]);
});

test('swapped digits beside the other side are asked about; at another seat sides differ by right', () => {
	const profile = emptyRoom({tape: [{from: 'middle', to: 'FR', metres: 2.24}]});
	const [remark] = remarkOnTape(profile, tape('FL', 2.42));
	expect(remark).toMatchObject({kind: 'doubt', code: 'tape-left-right'});
	expect(remark!.text).toContain('Two swapped digits would make it 2.24 m');
	expect(remarkOnTape(profile, tape('FL', 2.31))).toEqual([]);
	const seats = [...profile.seats, {id: 'side', name: 'Side'}];
	const beside = {...profile, seats, tape: [{from: 'side', to: 'FR', metres: 2.08}]};
	expect(remarkOnTape(beside, {...tape('FL', 2.92), from: 'side'})).toEqual([]);
});

test('a left speaker far from where the right one stands is asked about', () => {
	const profile = emptyRoom({tape: [{from: 'middle', to: 'FR', metres: 3}]});
	const [remark] = remarkOnTape(profile, tape('FL', 4));
	expect(remark).toMatchObject({kind: 'doubt', code: 'tape-left-right', about: 'FL'});
	expect(remark!.text).toBe(
		'Front left: 4.00 m, but Front right is at 3.00 m. That is just one metre. If they really stand that differently, keep it; else measure again.',
	);
	expect(remarkOnTape(profile, tape('FL', 3.2))).toEqual([]);
});
