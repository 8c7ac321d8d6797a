import {expect, test} from 'vitest';
import {parseProfile} from '../../../../source/profile/file/parse.ts';
import {blend} from '../../../../source/study/calibration/blend/blend.ts';
import {planSignals} from '../../../../source/study/playing/plan.ts';
import {bassPrompts} from '../../../../source/ui/walk/bass/bass.ts';
import {solutionOf} from '../../../../source/ui/walk/solution.ts';
import {blendInputs} from '../../../afresh.ts';
import {trueLevel} from '../../../study/calibration/blend/room.ts';
import {answered, bassProfile, standing, truth} from './exampleRoom.ts';

const takenAt = '2026-04-18T10:00:00Z';
const ids = (profile: Parameters<typeof bassPrompts>[0]) => bassPrompts(profile).map(({id}) => id);

test('bassPrompts has only a page when there is no sub', () => {
	expect(ids(bassProfile({channels: [{id: 'FC'}], subs: []}))).toEqual(['bass']);
});

test('bassPrompts asks for the settings and the way first, then each tone at three delays', () => {
	const prompts = bassPrompts(bassProfile());
	expect(prompts[0]).toMatchObject({id: 'bass', kind: 'page'});
	expect(prompts[1]).toMatchObject({id: 'bass:set', kind: 'choice'});
	expect(prompts[2]).toMatchObject({id: 'bass:way', kind: 'choice'});
	expect(prompts[2]!.choices![0]!.hint).toMatch(/\d+ readings, \d+ changes, about \d+ min/);
	expect(prompts[3]).toMatchObject({id: 'bass:sound', kind: 'choice'});
	// One front, three tones, three delays.
	expect(prompts).toHaveLength(4 + 9);
	expect(prompts.every(({isRequired}) => !isRequired)).toBe(true);
});

test('the other way asks for ten settings, upright and turned', () => {
	const some = answered(bassProfile(), 1);
	const way = bassPrompts(some)[2]!.take(some, '2', {takenAt: '2026-04-18T10:00:00Z'});
	if (way.kind !== 'taken') throw new Error('not taken');
	const search = bassPrompts(way.next).slice(4);
	expect(search).toHaveLength(10);
	expect(search.filter(({about}) => about!.includes('turned'))).toHaveLength(5);
});

test('the caution stands at the first tone and at every other', () => {
	const [, set, , , ...tones] = bassPrompts(bassProfile());
	expect(set!.caution).toMatch(/Turn the master volume down before the first one/);
	for (const {caution} of tones) expect(caution).toContain('Master down');
});

test('a reading keeps what sounded, the signal, what was added and the settings that stood', () => {
	const profile = answered(bassProfile());
	const [first] = profile.meter!;
	expect(first).toMatchObject({
		source: ['FC', 'sub1'],
		seat: 'sofa',
		weighting: 'Z',
		signal: {kind: 'tone', hertz: 64},
		round: 'first',
		inForce: standing.id,
	});
	expect(first).not.toHaveProperty('addedDelayMs');
	const later = profile.meter!.filter(({addedDelayMs}) => addedDelayMs !== undefined);
	expect(later.length).toBeGreaterThanOrEqual(6);
	expect(profile.meter!.filter(({blendPart}) => blendPart === 'verification')).toHaveLength(4);
	expect(parseProfile(JSON.stringify(profile), 'test')).toMatchObject({ok: true});
});

test('a question tells which box makes the added delay, in its own terms', () => {
	const later = bassPrompts(bassProfile()).find(({about}) => about?.includes('later'));
	expect(later!.about).toMatch(/All subs \d\.\d ms later: receiver, .*: delay 8\.0 ms to \d+\.\d ms\./);
});

test('a level that no two sounds make is told at once', () => {
	const some = answered(bassProfile(), 3 + 8);
	const last = bassPrompts(some).find(({isAnswered}) => !isAnswered)!;
	const taken = last.take(some, '110', {takenAt: '2026-04-18T10:00:00Z'});
	expect(taken).toMatchObject({kind: 'taken', hint: expect.stringContaining('no two sounds make')});
});

test('two readings each are asked for, before and after', () => {
	const verifying = bassPrompts(answered(bassProfile(), 3 + 9)).slice(4 + 9);
	expect(verifying.map(({about}) => /Before|After/.exec(about!)![0])).toEqual([
		'Before',
		'Before',
		'After',
		'After',
	]);
	expect(verifying[1]!.about).toContain('Reading 2');
});

test('what was kept is in the settings, and both then add up in the room', () => {
	const profile = answered(bassProfile());
	expect(blend(blendInputs(profile)).status).toBe('kept');
	const {channels, remarks} = solutionOf(profile);
	const [centre, lfe] = ['FC', 'LFE1'].map(id => channels.find(channel => channel.id === id)!);
	const inverted = lfe!.polarityInverted ? ['sub1'] : [];
	const both = (FC: number, sub1: number, turned: string[]) =>
		trueLevel(truth, {delayMs: {FC, sub1}, inverted: turned}, ['FC', 'sub1'], 80);
	const then = both(centre!.timing!.stepped, lfe!.timing!.stepped, inverted);
	expect(then).toBeGreaterThan(both(10, 8, []) + 1);
	expect(remarks).toContainEqual(expect.objectContaining({code: 'blended'}));
});

test('what was put back asks no more, and is in no setting', () => {
	const profile = answered(bassProfile(), 60, 20);
	expect(blend(blendInputs(profile)).status).toBe('put back');
	expect(bassPrompts(profile).every(({isAnswered}) => isAnswered)).toBe(true);
	expect(solutionOf(profile).remarks.map(({code}) => code)).toContain('tones-not-used');
});

test('writes the files when asked, and every question then names the file that it needs', () => {
	const chosen = answered(bassProfile(), 2);
	const sound = bassPrompts(chosen)[3]!;
	expect(sound.take(chosen, '1', {takenAt})).toMatchObject({kind: 'taken', wish: 'tones'});
	const own = sound.take(chosen, '2', {takenAt});
	if (own.kind !== 'taken') throw new Error('not taken');
	expect(own.wish).toBeUndefined();
	expect(bassPrompts(own.next).some(({about}) => about?.includes('.wav'))).toBe(false);

	const tones = bassPrompts(answered(bassProfile(), 3)).slice(4);
	const plan = planSignals(answered(bassProfile(), 3), -30).files;
	const row = plan.find(({file}) => file === 'layout-tones-FC.wav')!;
	expect(tones.map(({about}) => /(\S+\.wav), tone (\d) of 3/.exec(about!)!.slice(1))).toEqual(
		[1, 2, 3].flatMap(() => ['1', '2', '3'].map(number => [row.file, number])),
	);
	expect(row.row).toHaveLength(3);
	const verifying = bassPrompts(answered(bassProfile(), 3 + 9)).slice(4 + 9);
	const names = new Set(verifying.map(({about}) => /\S+\.wav/.exec(about!)![0]));
	expect(plan.map(({file}) => file)).toEqual(expect.arrayContaining([...names]));
});
