/*
Keys from the first question to settings that are typed in, counted on invented people at the keyboard: one who knows the
way, one who looks around, and one who comes back a year later with one speaker moved. The least is every digit of each value
with its Enter, and one Enter where Enter alone answers.
*/
import {readFileSync} from 'node:fs';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {parseProfile} from '../../../source/profile/file/parse.ts';
import type {Profile} from '../../../source/profile/types.ts';
import {type NamedKey, pressesOf} from '../../../source/ui/keys/press.ts';
import {startSession} from '../../../source/ui/session.ts';
import {situationOf} from '../../../source/ui/walk/dialIn/situation.ts';
import type {Prompt} from '../../../source/ui/walk/prompt/prompt.ts';
import {currentPrompt} from '../../../source/ui/walk/state.ts';
import {walkRound} from '../../../source/ui/walk/stops.ts';
import {memoryFiles} from '../memoryFiles.ts';

/** Somebody at the keyboard, key by key. */
function person(profiles: Readonly<Record<string, Profile>> = {}, now = '2026-11-26T20:00:00Z') {
	const session = startSession({files: memoryFiles(profiles), now: () => new Date(now)});
	const pressed: Record<string, number> = {};
	const least: Record<string, number> = {};
	const asked: string[] = [];
	let answers = 0;
	const walk = () => {
		const screen = session.screen();
		return screen.kind === 'walk' ? screen : undefined;
	};

	const prompt = (): Prompt<Profile> | undefined => {
		const screen = walk();
		return screen && currentPrompt(walkRound, screen.state);
	};

	const place = () => prompt()?.stop ?? 'new';
	const add = (counts: Record<string, number>, by: number, where = place()) => {
		counts[where] = (counts[where] ?? 0) + by;
	};

	/** Keys beside the straight way: letters one by one, others by name in angle brackets. */
	const look = (keys: string) => {
		for (const [, name, letter] of keys.matchAll(/<(\w+)>|(.)/g)) {
			add(pressed, 1);
			session.press(name ? [{key: name as NamedKey}] : pressesOf(letter!, {}));
		}
	};

	/** A value with its Enter, which must be taken. */
	const answer = (...texts: string[]) => {
		for (const text of texts) {
			const before = prompt();
			if (before) asked.push(before.id);
			answers++;
			add(least, text.length + 1);
			look(`${text}<enter>`);
			const state = walk()?.state;
			expect(state?.asked, `${before?.id}: ${text}`).toBeUndefined();
			expect(state?.notes.filter(({kind}) => kind === 'no' || kind === 'doubt') ?? []).toEqual([]);
		}
	};

	const total = (counts: Record<string, number>, ...where: readonly string[]) =>
		where.reduce((sum, one) => sum + (counts[one] ?? 0), 0);
	const ratio = (...where: readonly string[]) => total(pressed, ...where) / total(least, ...where);
	return {
		count: () => answers,
		prompt,
		look,
		answer,
		pressed,
		least,
		asked,
		ratio,
		profile: () => walk()!.state.subject,
	};
}

const roomToDialIn = ['room', 'kit', 'wiring', 'tape', 'meter', 'dialIn'] as const;
const lengths = ['9-4.5', '8-11.5', '9-5', '5-8', '5-11', '7-4', '7-2.5', '10-1'];
const levels = ['74.2', '73.1', '73.9', '75.2', '75.6', '74.8', '74', '78'];

/** Every value typed in, and the next stop reached. */
const isDialledIn = (profile: Profile) => {
	const situation = situationOf(profile);
	return situation.kind === 'decided' && situation.items.every(({isDone}) => isDone);
};

test('who goes straight from Room to Dial-in presses at most a quarter more than the values need', () => {
	const {look, answer, ratio, prompt, profile, least} = person();
	look('n');
	answer('Den', '6', '1', '3');
	// The walk opens at the first length; the room is one key away.
	look('[');
	expect(prompt()!.stop).toBe('room');
	answer('13-6', '18', '8-2', '', '70', '45', '1');
	expect(prompt()!.id).toBe('tape:FL:seat1');
	answer(...lengths, '', '');
	answer('', '', ...levels);
	// No data sheet at hand; then the set is decided, and its three pages are typed in.
	answer('', '', '', '', '');
	expect(isDialledIn(profile())).toBe(true);
	expect(least.tape).toBeGreaterThan(40);
	expect(ratio(...roomToDialIn)).toBeLessThanOrEqual(1.25);
});

test('who looks around from Room to Dial-in, skips, corrects and asks for help presses at most 1.6 times as much', () => {
	const {look, answer, ratio, prompt, profile} = person();
	look('n');
	answer('Den', '6', '1', '3');
	// Room, with help on what seems odd, a look at the floor plan, and back and forth between two questions.
	look('[?');
	answer('13-6', '18');
	look('?');
	answer('8-2', '');
	look('<down><up>');
	answer('70', '45', '1');
	// Kit from data sheets: a look ahead and back, the low limits, and another look.
	look('K<down><down><down><up><up><up>?');
	answer('45', '60', '80', '90');
	look('<down><down><escape>');
	// Wiring, looked at only.
	look('W<down><down>W');
	expect(prompt()!.id).toBe('tape:FL:seat1');
	look('?');
	answer(...lengths.slice(0, 3));
	// Two speakers cannot be reached now; they are asked for again at the end of the stop.
	look('ss');
	answer(...lengths.slice(5, 8));
	look('?');
	answer(...lengths.slice(3, 5));
	answer('', '');
	// An earlier length was misread: by name, and typed again in its place.
	look('jfront c<down><enter>e9-1<enter>');
	expect(prompt()!.id).toBe('meter:sound');
	answer('', '');
	look('?');
	answer(...levels.slice(0, 4));
	// A level slipped: taken back, and typed anew. Then a look at the whole table and at the plan.
	look('u');
	answer(levels[3]!);
	look('<tab><escape>pp');
	answer(...levels.slice(4));
	expect(prompt()!.id).toBe('dialIn');
	answer('');
	look('w<escape><right><left>');
	answer('', '', '');
	expect(isDialledIn(profile())).toBe(true);
	expect(ratio(...roomToDialIn)).toBeLessThanOrEqual(1.6);
});

function fromFile(path: string): Profile {
	const parsed = parseProfile(readFileSync(join(import.meta.dirname, '../../..', path)), path);
	if (!parsed.ok) throw new Error(`${path} does not parse.`);
	return parsed.profile;
}

test.each([
	['test/fixtures/attic-2026.json', 'RS', 'right surr', '2.06'],
	['profiles/cellar-2026.json', 'BL', 'back left', '3.02'],
])(
	'who comes back to %s a year later with %s moved answers at most 16 questions, and none about anything else',
	(path, id, name, metres) => {
		const older = fromFile(path);
		const {look, answer, prompt, profile, asked, count} = person({older}, '2027-10-20T20:00:00Z');
		look('f');
		answer('Next year', name);
		for (let turn = 0; turn < 20 && prompt()!.id !== 'dialIn'; turn++) {
			const {values, id: at} = prompt()!;
			// What did not move reads as it did; the moved one stands elsewhere, two decibels softer.
			const last = Number.parseFloat(values.at(-1)!);
			if (!at.includes(id)) answer(String(last));
			else answer(at.startsWith('tape:') ? metres : String(last - 2));
		}

		for (let page = 0; page < 9 && !isDialledIn(profile()); page++) answer('');
		expect(isDialledIn(profile())).toBe(true);
		// Its length, two lengths as a spot check, one level that ties the years together, its level; then pages of Dial-in.
		expect(asked.filter(at => at !== 'dialIn')).toEqual([
			expect.stringMatching(`^tape:${id}:`),
			expect.stringMatching(/^tape:check:/),
			expect.stringMatching(/^tape:check:/),
			expect.stringMatching(/^meter:anchor:/),
			expect.stringMatching(`^meter:${id}:`),
		]);
		expect(count()).toBeLessThanOrEqual(16);
	},
);
