import {expect, test} from 'vitest';
import {parseProfile} from '../../../../source/profile/file/parse.ts';
import {bassPrompts} from '../../../../source/ui/walk/bass/bass.ts';
import {solutionOf} from '../../../../source/ui/walk/solution.ts';
import {answered, bassProfile, bothWith, standing} from './exampleRoom.ts';

const ids = (profile: Parameters<typeof bassPrompts>[0]) => bassPrompts(profile).map(({id}) => id);

test('bassPrompts has only a page when there is no sub', () => {
	expect(ids(bassProfile({channels: [{id: 'FC'}], subs: []}))).toEqual(['bass']);
});

test('bassPrompts asks for the settings first, then each side alone, then both', () => {
	const prompts = bassPrompts(bassProfile());
	expect(prompts[0]).toMatchObject({id: 'bass', kind: 'page'});
	expect(prompts[1]).toMatchObject({id: 'bass:set', kind: 'choice'});
	const parts = prompts.slice(2).map(({id}) => /still|moved|both later|both/.exec(id)![0]);
	expect([...new Set(parts)]).toEqual(['still', 'moved', 'both', 'both later']);
	expect(prompts.every(({isRequired}) => !isRequired)).toBe(true);
});

test('the caution stands at the first tone and at every other', () => {
	const prompts = bassPrompts(bassProfile()).slice(1);
	expect(prompts[0]!.caution).toMatch(/Turn the master volume down before the first one/);
	for (const {caution} of prompts.slice(1)) expect(caution).toContain('Master down');
});

test('a tone reading keeps what sounded, the tone, the added delay and the settings that stood', () => {
	const profile = answered(bassProfile());
	const [first] = profile.meter!;
	expect(first).toMatchObject({
		source: 'FC',
		seat: 'sofa',
		weighting: 'Z',
		signal: {kind: 'tone', hertz: 64},
		round: 'first',
		inForce: standing.id,
	});
	expect(first).not.toHaveProperty('addedDelayMs');
	const later = profile.meter!.filter(({addedDelayMs}) => addedDelayMs !== undefined);
	expect(later.length).toBeGreaterThanOrEqual(3);
	expect(later[0]!.source).toEqual(['FC', 'sub1']);
	expect(parseProfile(JSON.stringify(profile), 'test')).toMatchObject({ok: true});
});

test('a question tells which box makes the added delay, in its own terms', () => {
	const some = answered(bassProfile(), 10);
	const later = bassPrompts(some).find(({id}) => id.includes('both later'));
	expect(later!.about).toMatch(/For it: receiver, .*: delay 8\.0 ms to \d+\.\d ms\. Undo it afterwards\./);
});

test('a level that no delay explains is told at once', () => {
	const some = answered(bassProfile(), 7);
	const both = bassPrompts(some).find(({id}) => id.endsWith('both 64'))!;
	const taken = both.take(some, '95', {takenAt: '2026-04-18T10:00:00Z'});
	expect(taken).toMatchObject({kind: 'taken', hint: expect.stringContaining('64 Hz')});
	expect(taken).toMatchObject({hint: expect.stringContaining('beyond')});
});

test('the settings follow from the answers, and both then add up in the room', () => {
	const profile = answered(
		bassProfile({
			tape: [
				{from: 'FC', to: 'sofa', metres: 2.7},
				{from: 'sub1', to: 'sofa', metres: 3.2},
			],
		}),
	);
	const [centre, lfe] = ['FC', 'LFE1'].map(
		id => solutionOf(profile).channels.find(channel => channel.id === id)!,
	);
	const then = bothWith({FC: centre!.timing!.stepped, sub1: lfe!.timing!.stepped}, 80);
	expect(then).toBeGreaterThan(bothWith({FC: 10, sub1: 8}, 80) + 1);
	expect([centre!, lfe!].flatMap(({remarks}) => remarks)).toContainEqual(
		expect.objectContaining({code: 'blended'}),
	);
});
