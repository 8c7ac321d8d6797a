import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import type {NamedKey, Press} from '../../../../source/ui/keys/press.ts';
import {type DialInState, dialInStart, pressDialIn} from '../../../../source/ui/walk/dialIn/press.ts';
import {factsOf} from '../../../../source/ui/walk/stops.ts';
import {exampleProfile} from './exampleProfile.ts';

type Desk = {readonly profile: Profile; readonly state: DialInState; readonly last: string};

const press = (key: string): Press =>
	key.length === 1 ? {key: 'character', text: key} : {key: key as NamedKey};

function play(desk: Desk, ...keys: string[]): Desk {
	return keys.reduce((now: Desk, key): Desk => {
		const result = pressDialIn(now.profile, now.state, press(key), {
			decidedAt: '2026-04-18T10:00:00Z',
			walk: factsOf(now.profile),
		});
		return {
			profile: result.kind === 'profile' ? result.profile : now.profile,
			state: result.kind === 'profile' || result.kind === 'state' ? result.state : now.state,
			last: result.kind,
		};
	}, desk);
}

const start: Desk = {profile: exampleProfile(), state: dialInStart, last: ''};
const ticks = ({profile}: Desk) => profile.settings!.at(-1)!.dialledIn;

test('nothing is pressed where nothing is to be typed in', () => {
	const bare = exampleProfile({settings: [], tape: [], meter: []});
	expect(play({...start, profile: bare}, 'enter').last).toBe('none');
});

test('Enter decides the set first, and only then ticks', () => {
	const decided = play(start, 'enter');
	expect(decided.profile.settings).toHaveLength(2);
	expect(ticks(decided)).toEqual([]);
	expect(ticks(play(decided, 'enter', 'enter'))).toEqual(['FL', 'FR']);
});

test('Enter goes to the next open item, round from the end, and leaves when all are done', () => {
	const atLast = play(start, 'enter', 'down', 'down', 'down', 'down', 'down', 'down');
	const ticked = play(atLast, 'enter');
	expect(ticks(ticked)).toEqual(['masterVolume']);
	expect(ticked.state.itemId).toBe('FL');
	const all = play(ticked, 'enter', 'enter', 'enter', 'enter', 'enter', 'enter');
	expect(ticks(all)).toHaveLength(7);
	expect(all.last).toBe('profile');
	expect(play(all, 'enter').last).toBe('next');
});

test('Enter on a ticked item moves on without another change', () => {
	const back = play(start, 'enter', 'enter', 'up', 'enter');
	expect(back.last).toBe('state');
	expect(back.state.itemId).toBe('FR');
	expect(ticks(back)).toEqual(['FL']);
});

test('Space ticks and takes the tick off without moving', () => {
	const once = play(start, 'enter', ' ');
	expect(ticks(once)).toEqual(['FL']);
	expect(once.state.itemId).toBe('FL');
	expect(ticks(play(once, ' '))).toEqual([]);
});

test('arrows stay among the items and leave upwards from the first', () => {
	const decided = play(start, 'enter');
	expect(play(decided, 'up').last).toBe('previous');
	expect(play(decided, 'down', 'down', 'up').state.itemId).toBe('FR');
	expect(play(decided, ...Array<string>(20).fill('down')).state.itemId).toBe('masterVolume');
});

test('the list opens and closes at the same item', () => {
	const listed = play(start, 'enter', 'down', 'l');
	expect(listed.state).toMatchObject({isList: true, itemId: 'FR'});
	expect(play(listed, 'down', 'l').state).toMatchObject({isList: false, itemId: 'FC'});
});

test('keys of the walk are left to the walk', () => {
	const decided = play(start, 'enter');
	for (const key of ['q', 'u', '?', 'tab', 'pageUp', 'pageDown', '[', ']'])
		expect(play(decided, key).last, key).toBe('none');
});

test('an out-of-date set waits for a decision, and may be kept', () => {
	const decided = play(start, 'enter', 'enter');
	const reading = {...decided.profile.meter![2]!, decibels: 69};
	const stale: Desk = {
		...decided,
		profile: {...decided.profile, meter: [...decided.profile.meter!, reading]},
	};
	const old = play(stale, 'o', 'enter');
	expect(old.profile.settings).toHaveLength(2);
	expect(ticks(old)).toHaveLength(2);
	const anew = play(stale, 'enter');
	expect(anew.profile.settings).toHaveLength(3);
	expect(ticks(anew)).toEqual(['FL']);
});
