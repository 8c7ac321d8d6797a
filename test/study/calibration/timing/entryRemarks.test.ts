import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {solve} from '../../../afresh.ts';
import {emptyRoom, tape} from '../room.ts';
import {sentence} from '../sentence.ts';

const timing = {
	kind: 'distance',
	shownIn: 'm',
	stepMetres: 0.01,
	minimumMetres: 0,
	maximumMetres: 20,
	speedOfSoundMetresPerSecond: 343,
} as const;

/** A front right with a link that is late, beside a front left without. */
function withLink(latencyMs: number, receiver: Partial<Profile['receiver']> = {}): Profile {
	const base = emptyRoom();
	return emptyRoom({
		receiver: {...base.receiver!, timing, ...receiver},
		channels: [{id: 'FL'}, {id: 'FR', latencyMs, latencyFrom: 'wireless link'}],
		tape: [tape('FL', 3), tape('FR', 3)],
	});
}

function remarks(profile: Profile, code: string) {
	const {channels, remarks: common} = solve(profile);
	return [...channels.flatMap(channel => channel.remarks), ...common].filter(one => one.code === code);
}

test('an entry that holds a latency says so, with the metres that the receiver makes of it', () => {
	const [remark, ...others] = remarks(withLink(12), 'entry-holds-latency');
	expect(others).toEqual([]);
	expect(remark).toMatchObject({kind: 'advice', about: ['FR']});
	// 12 ms at the receiver's 343 m/s are 4.116 m.
	expect(remark!.facts).toMatchObject({metres: expect.closeTo(4.116, 6)});
	expect(sentence(remark!)).toContain('4.12 m longer than the tape’s on purpose');
	expect(sentence(remark!)).toContain('12.0 ms of latency at wireless link');
});

test('a latency too short to look like a slip is not told, and none in a box that takes delays', () => {
	expect(remarks(withLink(0.5), 'entry-holds-latency')).toEqual([]);
	const delays = {kind: 'delay', stepMs: 0.1, minimumMs: 0, maximumMs: 20} as const;
	expect(remarks(withLink(12, {timing: delays}), 'entry-holds-latency')).toEqual([]);
});

test('distances that were shifted together to fit the range are told as meant, a shift within the steps is a note', () => {
	// 3 m and 3 m + 55 ms · 343 m/s = 21.865 m fit a range of 20 m only when all are entered 1.865 m shorter, or more.
	const [shift] = remarks(withLink(55), 'distances-shifted-together');
	expect(shift).toMatchObject({kind: 'advice', about: []});
	expect((shift!.facts as {metres: number}).metres).toBeLessThan(-1.86);
	expect(sentence(shift!)).toContain('shorter than measured, all by the same');
	expect(remarks(withLink(12), 'distances-shifted-together').every(({kind}) => kind === 'note')).toBe(true);
});
