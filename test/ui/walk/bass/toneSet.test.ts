import {expect, test} from 'vitest';
import {parseProfile} from '../../../../source/profile/file/parse.ts';
import {toneSetOf, toneSetPrompt} from '../../../../source/ui/walk/bass/toneSet.ts';
import {bassProfile, standing} from './exampleRoom.ts';

const taking = {takenAt: '2026-04-18T10:00:00Z'};

function choose(profile: ReturnType<typeof bassProfile>, label: RegExp) {
	const prompt = toneSetPrompt(profile);
	const at = prompt.choices!.findIndex(choice => label.test(choice.label));
	const taken = prompt.take(profile, String(at + 1), taking);
	if (taken.kind !== 'taken') throw new Error('not taken');
	return taken.next;
}

test('toneSetPrompt offers equal delays when no set holds any', () => {
	expect(toneSetPrompt(bassProfile({settings: []})).choices!.map(({label}) => label)).toEqual([
		'All delays or distances set alike',
	]);
});

test('toneSetPrompt offers the latest set with delays first', () => {
	const older = {...standing, id: 'older', name: 'Older'};
	const trims = {id: 'trims', origin: 'found' as const, channels: {FC: {trimDb: {stepped: 1}}}};
	const {choices} = toneSetPrompt(bassProfile({settings: [older, standing, trims]}));
	expect(choices!.map(({label}) => label)).toEqual(['“Now”', '“Older”', 'All delays or distances set alike']);
});

test('the choice is kept in the profile, and asked about no more', () => {
	const chosen = choose(bassProfile(), /Now/);
	expect(toneSetOf(chosen)).toEqual(standing);
	expect(toneSetPrompt(chosen)).toMatchObject({isAnswered: true, values: ['“Now”']});
});

test('equal delays become a set of their own that counts as found, before all others', () => {
	const chosen = choose(bassProfile(), /alike/);
	expect(chosen.settings!.map(({id}) => id)).toEqual(['alike', 'now']);
	expect(toneSetOf(chosen)).toMatchObject({
		origin: 'found',
		channels: {FC: {delayMs: {stepped: 0}}, LFE1: {delayMs: {stepped: 0}}},
	});
	expect(choose(chosen, /alike/).settings).toHaveLength(2);
	expect(parseProfile(JSON.stringify(chosen), 'test')).toMatchObject({ok: true});
});
