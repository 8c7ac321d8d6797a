import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {reduceRound, startRound} from '../../../../source/ui/walk/state.ts';
import {promptsFor, walkRound} from '../../../../source/ui/walk/stops.ts';
import {den} from '../../rooms.ts';

const takenAt = '2026-04-18T20:00:00Z';
const ear = ['FL', 'FC', 'FR', 'RS', 'LS', 'TpSiR', 'TpSiL', 'sub1'];
const taped = den({tape: ear.map(from => ({from, to: 'seat1', metres: 2.5}))});
const wallIds = (profile: Profile) =>
	promptsFor(profile).filter(({id}) => /^tape:.*(wall:|floor|ceiling)/.test(id) && id !== 'tape:walls');

function answered(profile: Profile, id: string, text: string) {
	const typed = reduceRound(walkRound, startRound(walkRound, profile, id), {kind: 'type', text});
	return reduceRound(walkRound, typed, {kind: 'take', takenAt});
}

test('the walls are offered once after the distances to the seat, and Enter goes on', () => {
	const offer = answered(taped, 'tape:links', '1');
	expect(offer.promptId).toBe('tape:walls');
	const passed = reduceRound(walkRound, offer, {kind: 'take', takenAt});
	expect(passed.promptId).toBe('meter:sound');
	expect(answered(passed.subject, 'tape:FL:seat1', '2.5m').promptId).not.toBe('tape:walls');
});

test('taken up, the round asks reading after reading, each chosen from what was read before', () => {
	let state = answered(taped, 'tape:walls', '2');
	const asked: string[] = [];
	for (const _ of [1, 2]) {
		asked.push(state.promptId);
		// Any length does; one that is doubted or asked about is taken by the second Enter.
		for (const text of ['2.4m', '', '']) {
			if (state.promptId !== asked.at(-1)) break;
			state = reduceRound(walkRound, {...state, typed: text || state.typed}, {kind: 'take', takenAt});
		}
	}

	expect(new Set(asked).size).toBe(2);
	expect(asked.every(id => id.startsWith('tape:'))).toBe(true);
	expect(state.subject.tape!.length).toBeGreaterThan(ear.length);
});

test('what was typed at Room is not asked again', () => {
	const room = {
		...taped,
		tape: [
			...taped.tape!,
			{from: 'wall:left', to: 'wall:right', metres: 4},
			{from: 'wall:front', to: 'wall:back', metres: 5},
		],
	};
	const begun = answered(room, 'tape:walls', '2').subject;
	expect(wallIds(begun).length).toBeGreaterThan(2);
	expect(wallIds(begun).map(({question}) => question)).not.toContain('Width of the room');
});

test('without the round nothing is asked of walls', () => {
	expect(wallIds(taped)).toEqual([]);
});
