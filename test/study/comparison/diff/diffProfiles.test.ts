import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {diffProfiles} from '../../../../source/study/comparison/diff/diffProfiles.ts';
import type {Change, MovedChange} from '../../../../source/study/comparison/diff/profileDiff.ts';
import type {Solved} from '../../../../source/study/comparison/diff/solved.ts';
import {arrange, usualArrangement} from './exampleRoom.ts';

const room = arrange(usualArrangement);
const withProfile = (change: Partial<Profile>): Solved => ({...room, profile: {...room.profile, ...change}});
const codes = (diff: ReturnType<typeof diffProfiles>) => diff.remarks.map(({code}) => code);
const moved = (changes: readonly Change[]) =>
	changes.filter((change): change is MovedChange => change.kind === 'moved');

test('`diffProfiles` says when one profile is given twice', () => {
	const diff = diffProfiles(room, room);
	expect(diff.isSame).toBe(true);
	expect(codes(diff)).toContain('one-profile-twice');
});

test('`diffProfiles` calls a copy with another name and date the same, but not the same file', () => {
	const diff = diffProfiles(room, withProfile({name: 'Copy', date: '2026-05-01', note: 'Copied.'}));
	expect(diff.isSame).toBe(true);
	expect(codes(diff)).not.toContain('one-profile-twice');
});

test('`diffProfiles` tells different rooms and compares them all the same', () => {
	const diff = diffProfiles(room, withProfile({room: {...room.profile.room, name: 'Barn'}, tape: []}));
	expect(diff.sameRoom).toBe(false);
	expect(codes(diff)).toContain('different-rooms');
	expect(diff.changes).toContainEqual(
		expect.objectContaining({kind: 'only in one', side: 'older', count: 5}),
	);
});

test('`diffProfiles` says when the dates run backwards and when settings are missing', () => {
	const diff = diffProfiles(room, withProfile({date: '2025-01-01'}));
	expect(codes(diff)).toEqual(['dates-run-backwards', 'settings-missing', 'settings-missing']);
});

test('`diffProfiles` does not overlook a key that it does not know', () => {
	const diff = diffProfiles(room, withProfile({curtains: 'closed'} as Partial<Profile>));
	expect(diff.isSame).toBe(false);
	expect(diff.changes[0]).toMatchObject({kind: 'stated', fields: [{path: 'curtains', after: 'closed'}]});
});

test('`diffProfiles` matches a surround pair that another layout calls by other names', () => {
	const rename = (id: string) => ({LS: 'SiL', RS: 'SiR'})[id] ?? id;
	const newer = withProfile({
		channels: room.profile.channels.map(channel => ({...channel, id: rename(channel.id) as 'SiL'})),
		tape: room.profile.tape!.map(reading => ({...reading, from: rename(reading.from)})),
		meter: room.profile.meter!.map(reading => ({...reading, source: rename(reading.source as string)})),
	});
	const diff = diffProfiles(room, newer);
	expect(
		diff.changes.map(change => change.kind === 'renamed' && [change.match.older, change.match.newer]),
	).toEqual([
		['LS', 'SiL'],
		['RS', 'SiR'],
	]);
});

test('`diffProfiles` follows the names of two subs whose ids were swapped', () => {
	const sub = (id: string, name: string) => ({id, name, fedBy: 'LFE1' as const});
	const diff = diffProfiles(
		withProfile({subs: [sub('sub1', 'Front left sub'), sub('sub2', 'Back sub')]}),
		withProfile({subs: [sub('sub1', 'Back sub'), sub('sub2', 'Front left sub')]}),
	);
	const subs = diff.matches.filter(({kind}) => kind === 'sub');
	expect(subs.map(({older, newer, by}) => [older, newer, by])).toEqual([
		['sub1', 'sub2', 'name'],
		['sub2', 'sub1', 'name'],
	]);
});

test('`diffProfiles` matches the only seat under its new id and name, and reports no other change', () => {
	const diff = diffProfiles(
		room,
		withProfile({
			seats: [{id: 'middle', name: 'Middle cushion', reference: true}],
			tape: room.profile.tape!.map(reading => ({...reading, to: 'middle'})),
			meter: room.profile.meter!.map(reading => ({...reading, seat: 'middle'})),
		}),
	);
	expect(diff.changes.map(({kind}) => kind)).toEqual(['renamed']);
});

test('`diffProfiles` names added and removed channels, which go before smaller changes', () => {
	const newer = withProfile({
		channels: [...room.profile.channels.filter(({id}) => id !== 'FC'), {id: 'TpFL'}],
		air: {temperatureCelsius: 21},
	});
	const {changes} = diffProfiles(room, newer);
	expect(changes.slice(0, 2)).toMatchObject([
		{kind: 'removed', about: 'FC'},
		{kind: 'added', about: 'TpFL'},
	]);
	expect(changes.at(-1)).toMatchObject({kind: 'stated', about: 'air'});
});

test('`diffProfiles` calls a speaker moved when its distance changed beyond the tape, and read again when within it', () => {
	const shift = (id: string, by: number) =>
		withProfile({
			tape: room.profile.tape!.map(reading => ({
				...reading,
				metres: reading.metres + (reading.from === id ? by : 0),
			})),
		});
	const far = diffProfiles(room, shift('LS', 0.11));
	expect(moved(far.changes)).toMatchObject([{about: 'LS', readings: [{change: expect.closeTo(0.11, 9)}]}]);
	// Two readings of 2 m on a tape of 5 mm: √2·√(2² + 2² + 5²/12) mm = 4.5 mm; 3 sigma is 13 mm.
	const near = diffProfiles(room, shift('LS', 0.01));
	expect(near.changes.map(({kind}) => kind)).toEqual(['tape read again']);
});

test('`diffProfiles` calls the seat moved when most distances to it changed and no wall distance speaks', () => {
	const newer = withProfile({
		tape: room.profile.tape!.map(reading => ({...reading, metres: reading.metres + 0.2})),
	});
	expect(moved(diffProfiles(room, newer).changes)).toMatchObject([{about: 'sofa', name: 'Sofa middle'}]);
});

test('`diffProfiles` calls the speaker moved that left its wall, even when the tape was pulled from the seat', () => {
	const tape = (fromWall: number, toSeat: number) => [
		{from: 'sofa', to: 'FL', metres: toSeat},
		{from: 'wall:left', to: 'FL', metres: fromWall},
		{from: 'wall:left', to: 'sofa', metres: 2},
	];
	const diff = diffProfiles(withProfile({tape: tape(0.8, 2.9)}), withProfile({tape: tape(0.92, 2.8)}));
	expect(moved(diff.changes)).toMatchObject([
		{about: 'FL', readings: [{change: expect.closeTo(0.12, 9)}, {change: expect.closeTo(-0.1, 9)}]},
	]);
});

test('`diffProfiles` tells a replaced speaker from data that were only added', () => {
	const [first, ...rest] = room.profile.channels;
	const replaced = withProfile({channels: [{...first!, speaker: {lowLimitHertz: 40}}, ...rest]});
	expect(diffProfiles(room, replaced).changes).toMatchObject([{kind: 'replaced', about: 'FL'}]);
	const stated = withProfile({
		channels: [{...first!, speaker: {...first!.speaker, impedanceOhms: 6}}, ...rest],
	});
	expect(diffProfiles(room, stated).changes).toMatchObject([
		{kind: 'stated', fields: [{path: 'speaker.impedanceOhms', before: undefined, after: 6}]},
	]);
});

test('`diffProfiles` takes trim and master volume in force out of a change of level', () => {
	const newer = arrange({...usualArrangement, trimInForceDb: 2, masterVolumeDb: -10});
	const level = diffProfiles(room, newer).changes.find(change => change.kind === 'level');
	expect(level).toMatchObject({change: expect.closeTo(-8, 9), withoutSettings: expect.closeTo(0, 9)});
});
