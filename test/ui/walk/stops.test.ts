import {describe, expect, test} from 'vitest';
import {checkProfile} from '../../../source/profile/file/parse.ts';
import {layoutNames} from '../../../source/profile/generic/layouts.ts';
import {newProfile} from '../../../source/profile/generic/newProfile.ts';
import {genericReceiverNames} from '../../../source/profile/generic/receivers.ts';
import type {Profile} from '../../../source/profile/types.ts';
import type {Prompt} from '../../../source/ui/walk/prompt/prompt.ts';
import {promptsFor, stopStatusOf} from '../../../source/ui/walk/stops.ts';
import {den} from '../rooms.ts';

const taking = {takenAt: '2026-04-18T20:00:00.000Z'};

/** An answer that the prompt takes: the last choice, or the first of some texts that is no question back. */
function answered(profile: Profile, prompt: Prompt<Profile>): Profile | undefined {
	const texts = prompt.choices
		? // The round of walls asks until everything is placed; it has tests of its own.
			[prompt.id === 'tape:walls' ? '1' : String(prompt.choices.length)]
		: ['4', '2.5 m', '75', '0.5', '20', '80', '5 ms', '-2', '0.1', '343', 'Display 180', '2 m x 1 m'];
	for (const text of texts) {
		const taken = prompt.take(profile, text, taking);
		if (taken.kind === 'taken') return taken.next;
	}

	return undefined;
}

describe.each(layoutNames)('the questions for a %s', layout => {
	const profile = newProfile({name: 'Room', date: '2026-04-18', layout, receiver: genericReceiverNames[0]});

	test('each have an id of their own, words, and an explanation on one line', () => {
		const prompts = promptsFor(profile);
		expect(new Set(prompts.map(({id}) => id)).size).toBe(prompts.length);
		for (const {question, explain, about} of prompts) {
			expect(question.length).toBeGreaterThan(0);
			for (const text of [question, explain, about ?? '']) expect(text).not.toContain('\n');
			expect(explain.length).toBeGreaterThan(0);
		}
	});

	test('needs a distance and a level of every speaker and sub, and nothing of room or kit', () => {
		const needed = promptsFor(profile).filter(({isRequired}) => isRequired);
		const sources = profile.channels.filter(({id}) => id !== 'LFE1').length + (profile.subs ?? []).length;
		expect(needed.filter(({stop}) => stop === 'tape')).toHaveLength(sources);
		// And one on what stands in the receiver.
		expect(needed.filter(({stop}) => stop === 'meter')).toHaveLength(sources + 1);
		expect(needed.filter(({stop}) => stop === 'room' || stop === 'kit')).toEqual([]);
	});
});

test('whatever is answered in whatever order of stops leaves a sound profile', () => {
	const start = newProfile({
		name: 'Room',
		date: '2026-04-18',
		layout: '5.1.2',
		subs: 2,
		receiver: 'fine-delay',
		bassProcessor: 'digital',
		seats: 2,
	});
	for (const order of [1, -1]) {
		let profile = start;
		const done = new Set<string>();
		for (let next = openPrompt(); next; next = openPrompt()) {
			done.add(next.id);
			const after = answered(profile, next);
			expect(after, next.id).toBeDefined();
			profile = after!;
			expect(checkProfile(profile), next.id).toEqual([]);
		}

		expect(done.size).toBeGreaterThan(60);
		function openPrompt() {
			const open = promptsFor(profile).filter(({id, kind}) => kind !== 'page' && !done.has(id));
			return order > 0 ? open[0] : open.at(-1);
		}
	}
}, 180_000);

test('every answer is shown as the value of its question afterwards', () => {
	const profile = den();
	for (const prompt of promptsFor(profile).filter(({kind}) => kind !== 'page')) {
		const after = answered(profile, prompt);
		expect(after, prompt.id).toBeDefined();
		const same = promptsFor(after!).find(({id}) => id === prompt.id);
		expect(same?.isAnswered ?? true, prompt.id).toBe(true);
	}
});

test('`stopStatusOf` tells what is done, what is needed and what is left for later', () => {
	const states = Object.fromEntries(stopStatusOf(den()).map(status => [status.id, status]));
	expect(states.room).toMatchObject({state: 'later', required: 0});
	expect(states.tape).toMatchObject({state: 'open', answered: 0, required: 8});
	expect(states.meter).toMatchObject({state: 'open', answered: 0, required: 9});
	const tape = ['FL', 'FR', 'FC', 'LS', 'RS', 'TpSiL', 'TpSiR', 'sub1'].map(from => ({
		from,
		to: 'seat1',
		metres: 2.5,
	}));
	expect(stopStatusOf(den({tape})).find(({id}) => id === 'tape')).toMatchObject({state: 'done'});
});

test('questions for sixteen channels at eight seats are made in one go, each once', () => {
	const large = newProfile({name: 'Full', date: '2026-04-18', layout: '9.1.6', subs: 4, seats: 8});
	const prompts = promptsFor(large);
	// The screen, and the two offers: what is late, and the walls.
	expect(prompts.filter(({stop}) => stop === 'tape').length).toBe(8 * (15 + 4) + 1 + 2);
	expect(promptsFor(large)).toBe(prompts);
});
