import {describe, expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import type {NamedKey, Press} from '../../../../source/ui/keys/press.ts';
import {type DialInState, dialInStart, pressDialIn} from '../../../../source/ui/walk/dialIn/press.ts';
import {exampleProfile} from './exampleProfile.ts';

type Desk = {readonly profile: Profile; readonly state: DialInState; readonly last: string};

const press = (key: string): Press =>
	key.length === 1 ? {key: 'character', text: key} : {key: key as NamedKey};

function play(desk: Desk, ...keys: string[]): Desk {
	return keys.reduce((now: Desk, key): Desk => {
		const result = pressDialIn(now.profile, now.state, press(key), {
			decidedAt: '2026-04-18T10:00:00Z',
		});
		return {
			profile: result.kind === 'profile' ? result.profile : now.profile,
			state: result.kind === 'profile' || result.kind === 'state' ? result.state : now.state,
			last: result.kind,
		};
	}, desk);
}

const start: Desk = {profile: exampleProfile(), state: {...dialInStart, isSingle: true}, last: ''};
const pages: Desk = {...start, state: dialInStart};
/** The other view: channel by channel. */
const single = (desk: Desk): Desk => play(desk, 'l');
const item = ({state}: Desk) => state.tick?.split('.')[0];
const ticks = ({profile}: Desk) => profile.settings!.at(-1)!.dialledIn;

test('nothing is pressed where nothing is to be typed in', () => {
	const bare = exampleProfile({settings: [], tape: [], meter: []});
	expect(play({...start, profile: bare}, 'enter').last).toBe('none');
});

test('Enter decides the set first, and only then ticks', () => {
	const decided = single(play(start, 'enter'));
	expect(decided.profile.settings).toHaveLength(2);
	expect(ticks(decided)).toEqual([]);
	expect(ticks(play(decided, 'enter', 'enter'))).toEqual(['FL', 'FR']);
});

test('Enter goes to the next open item, round from the end, and leaves when all are done', () => {
	const atLast = play(single(play(start, 'enter')), 'down', 'down', 'down', 'down', 'down', 'down');
	const ticked = play(atLast, 'enter');
	expect(ticks(ticked)).toEqual(['masterVolume']);
	expect(item(ticked)).toBe('FL');
	const all = play(ticked, 'enter', 'enter', 'enter', 'enter', 'enter', 'enter');
	expect(ticks(all)).toHaveLength(7);
	expect(all.last).toBe('profile');
	expect(play(all, 'enter').last).toBe('next');
});

test('Enter on a ticked item moves on without another change', () => {
	const back = play(single(play(start, 'enter')), 'enter', 'up', 'enter');
	expect(back.last).toBe('state');
	expect(item(back)).toBe('FR');
	expect(ticks(back)).toEqual(['FL']);
});

test('Space ticks and takes the tick off without moving', () => {
	const once = play(single(play(start, 'enter')), ' ');
	expect(ticks(once)).toEqual(['FL']);
	expect(item(once)).toBe('FL');
	expect(ticks(play(once, ' '))).toEqual([]);
});

test('arrows stay among the items and leave upwards from the first', () => {
	const decided = single(play(start, 'enter'));
	expect(play(decided, 'up').last).toBe('previous');
	expect(item(play(decided, 'down', 'down', 'up'))).toBe('FR');
	expect(item(play(decided, ...Array<string>(20).fill('down')))).toBe('masterVolume');
});

test('the other view opens and closes at the same item', () => {
	const paged = play(single(play(start, 'enter')), 'down', 'l');
	expect(paged.state.isSingle).toBe(false);
	expect(item(paged)).toBe('FR');
	expect(play(paged, 'l').state.isSingle).toBe(true);
});

describe('the boxes’ own pages', () => {
	const decided = play(pages, 'enter');
	const rowOf = ({state}: Desk) => state.tick;

	test('Enter ticks a whole page and goes to the next', () => {
		const once = play(decided, 'enter');
		expect(ticks(once)).toEqual(['FL.distance', 'FR.distance', 'FC.distance', 'LFE1.distance']);
		expect(rowOf(once)).toMatch(/\.trim$/);
	});

	test('Space ticks a row and goes to the one below; again it takes the tick off', () => {
		const once = play(decided, ' ');
		expect(ticks(once)).toEqual(['FL.distance']);
		expect(rowOf(once)).toBe('FR.distance');
		expect(ticks(play(once, 'up', ' '))).toEqual([]);
	});

	test('an item all of whose values are ticked is ticked as a whole', () => {
		let desk = decided;
		for (let count = 0; count < 12 && desk.last !== 'next'; count++) desk = play(desk, 'enter');
		expect(ticks(desk)).toEqual(
			expect.arrayContaining(['FL', 'FR', 'FC', 'LFE1', 'A', 'lfeLowPass', 'masterVolume']),
		);
		expect(desk.last).toBe('next');
	});

	test('arrows to the sides turn pages, up and down go through all rows', () => {
		expect(rowOf(play(decided, 'right'))).toBe('FL.trim');
		expect(rowOf(play(decided, 'right', 'left'))).toBe('FL.distance');
		expect(rowOf(play(decided, 'down', 'down', 'down', 'down'))).toBe('FL.trim');
	});

	test('w tells why, and leaves the ticks alone', () => {
		const why = play(decided, 'w');
		expect(why.state.isWhyShown).toBe(true);
		const back = play(why, 'enter');
		expect(back.state.isWhyShown).toBe(false);
		expect(ticks(back)).toEqual([]);
	});
});

test('keys of the walk are left to the walk', () => {
	const decided = single(play(start, 'enter'));
	for (const key of ['q', 'u', '?', 'tab', 'pageUp', 'pageDown', '[', ']'])
		expect(play(decided, key).last, key).toBe('none');
});

test('an out-of-date set waits for a decision, and may be kept', () => {
	const decided = play(single(play(start, 'enter')), 'enter');
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
