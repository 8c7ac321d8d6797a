import {expect, test} from 'vitest';
import {processorOf, subsByFeed, subsOf} from '../../../source/profile/ask/subs.ts';
import type {Profile, Sub} from '../../../source/profile/types.ts';

const sub = (id: string, own: Partial<Sub> = {}): Sub => ({id, name: id, fedBy: 'LFE1', ...own});
const room = (own: Partial<Profile>) =>
	({channels: [{id: 'FL'}, {id: 'LFE1'}], ...own}) as Pick<Profile, 'channels' | 'subs' | 'bassProcessor'>;
const processor = {
	outputs: ['A', 'B'],
	delay: {stepMs: 0.1, minimumMs: 0, maximumMs: 20},
	gain: {stepDb: 0.5, minimumDb: -12, maximumDb: 12},
} as NonNullable<Profile['bassProcessor']>;

test('subsOf takes an LFE channel that names no sub for one of its own', () => {
	expect(subsOf(room({})).map(({id, fedBy}) => [id, fedBy])).toEqual([['LFE1', 'LFE1']]);
	expect(subsOf(room({channels: [{id: 'FL'}]} as Partial<Profile>))).toEqual([]);
});

test('subsOf gives the list of the profile itself where each LFE channel has its sub', () => {
	const subs = [sub('one'), sub('two')];
	expect(subsOf(room({subs}))).toBe(subs);
});

test('subsOf adds the implied sub after those that are named', () => {
	const two = room({channels: [{id: 'LFE1'}, {id: 'LFE2'}], subs: [sub('one')]} as Partial<Profile>);
	expect(subsOf(two).map(({id}) => id)).toEqual(['one', 'LFE2']);
});

test('processorOf knows the box only where the sub hangs on an output that it has', () => {
	const withBox = {bassProcessor: processor};
	expect(processorOf(withBox, sub('one', {processorOutput: 'A'}))).toBe(processor);
	expect(processorOf(withBox, sub('one', {processorOutput: 'C'}))).toBeUndefined();
	expect(processorOf(withBox, sub('one'))).toBeUndefined();
	expect(processorOf({}, sub('one', {processorOutput: 'A'}))).toBeUndefined();
});

test('subsByFeed groups by channel, then output; the empty name holds those connected directly', () => {
	const subs = [
		sub('one', {processorOutput: 'A'}),
		sub('two', {processorOutput: 'A'}),
		sub('three'),
		sub('four', {fedBy: 'LFE2', processorOutput: 'lost'}),
	];
	const feeds = subsByFeed(room({subs, bassProcessor: processor}));
	expect([...feeds].map(([feed, byOutput]) => [feed, Object.fromEntries(byOutput)])).toEqual([
		['LFE1', {A: ['one', 'two'], '': ['three']}],
		['LFE2', {'': ['four']}],
	]);
});
