import {Box, renderToString} from 'ink';
import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {cellWidth} from '../../../../source/report/fitCells.ts';
import {planSignals} from '../../../../source/study/playing/plan.ts';
import {bassPrompts} from '../../../../source/ui/walk/bass/bass.ts';
import {bassPage} from '../../../../source/ui/walk/bass/bassPage.tsx';
import {blendOf} from '../../../../source/ui/walk/bass/blendOf.ts';
import {fileText} from '../../../../source/ui/walk/bass/sound.ts';
import {withDecided} from '../../../../source/ui/walk/dialIn/decide.ts';
import {factsOf} from '../../../../source/ui/walk/stops.ts';
import {apart, levelOf, profileWith} from '../../../study/calibration/blend/pairRoom.ts';

const takenAt = '2026-04-18T10:00:00Z';
const started = () => withDecided(profileWith(), takenAt);
const promptIn = (profile: Profile, id: string) => bassPrompts(profile).find(prompt => prompt.id === id);
const idsIn = (profile: Profile) => bassPrompts(profile).map(({id}) => id);

function answer(profile: Profile, id: string, text: string): Profile {
	const taken = promptIn(profile, id)!.take(profile, text, {takenAt});
	if (taken.kind !== 'taken') throw new Error(`${id} did not take ${text}`);
	return taken.next;
}

/** Answers what is open between the subs as a meter in that room would, at most so many readings. */
function walked(profile: Profile, most = 100): Profile {
	let now = profile;
	const set = profile.settings!.at(-1)!;
	for (let count = 0; count < most; count++) {
		const steps = blendOf(now).pair!.blocks.flatMap(block => block.steps);
		const step = steps.find(({isTaken}) => !isTaken);
		if (!step || !promptIn(now, `bass:${step.id}`)) break;
		now = answer(now, `bass:${step.id}`, levelOf(apart, set, step).toFixed(2));
	}

	return now;
}

const chosen = () => answer(answer(started(), 'bass:set', '1'), 'bass:pair', '1');
const view = (profile: Profile, columns = 80, height = 40) =>
	renderToString(
		<Box>
			{bassPage.view({profile, state: bassPage.start(profile), columns, height, walk: factsOf(profile)})}
		</Box>,
		{columns},
	);

test('the extra is offered once, after the settings that stand and before the way, with what it takes; Enter passes it', () => {
	const ids = idsIn(started());
	expect(ids.indexOf('bass:pair')).toBe(ids.indexOf('bass:set') + 1);
	expect(ids.indexOf('bass:way')).toBe(ids.indexOf('bass:pair') + 1);
	const offer = promptIn(started(), 'bass:pair')!;
	expect(offer).toMatchObject({isRequired: false, usual: 1, isAnswered: false});
	expect(offer.choices![0]!.hint).toMatch(/24 readings, \d+ min/);
	const passed = answer(started(), 'bass:pair', '2');
	expect(idsIn(passed).some(id => id.startsWith('bass:pair '))).toBe(false);
	expect(view(started()).replaceAll(/\s+/g, ' ')).toContain('Two subs against each other, an extra');
});

test('chosen, it asks for tones with one sub at three delays, and says what to turn', () => {
	const tones = bassPrompts(chosen()).filter(({id}) => id.startsWith('bass:pair '));
	expect(tones).toHaveLength(12);
	expect(tones[4]!.about).toMatch(/Sub 2 5\.6 ms later: bass processor, output B: delay .* to/);
	for (const {caution} of tones) expect(caution).toContain('Master down');
	const [first] = answer(chosen(), tones[4]!.id, '71.2').meter!;
	expect(first).toMatchObject({
		source: ['sub1', 'sub2'],
		signal: {kind: 'tone', hertz: 32},
		addedDelayMs: 5.6,
		addedDelaySources: ['sub2'],
		inForce: 'set1',
	});
});

test('the file that a tone is played from is among those that are written, 10 dB low as playback adds 10 dB', () => {
	const profile = answer(chosen(), 'bass:sound', '1');
	const tones = bassPrompts(profile).filter(({id}) => id.startsWith('bass:pair '));
	expect(tones[1]!.about).toContain('layout-tones-LFE1.wav, tone 2 of 4.');
	const {files} = planSignals(profile, -30);
	const file = files.find(each => each.file === 'layout-tones-LFE1.wav');
	expect(file).toMatchObject({row: [32, 40, 50, 63], channel: 'LFE1', levelDbfs: -40});
});

test('a receiver with two outputs for subs plays the one LFE channel of the file into both', () => {
	const profile = chosen();
	const [one, two] = profile.subs!.map(({processorOutput: _, ...sub}) => sub);
	const twoOutputs: Profile = {
		...profile,
		channels: [...profile.channels, {id: 'LFE2'}],
		subs: [one!, {...two!, fedBy: 'LFE2'}],
	};
	const rows = planSignals(twoOutputs, -30).files.filter(({file}) => file.startsWith('layout-tones-LFE'));
	expect(rows).toMatchObject([{file: 'layout-tones-LFE1.wav', row: [32, 40, 50, 63]}]);
	const step = {...blendOf(profile).pair!.blocks[0]!.steps[0]!, playInto: ['LFE1', 'LFE2']};
	const said = fileText(answer(profile, 'bass:sound', '1'), step, [step]);
	expect(said).toBe('layout-tones-LFE1.wav, tone 1 of 1; it plays into both outputs.');
});

test('it resumes in the middle, and what was kept is typed in before anything is read into the fronts', () => {
	const some = walked(chosen(), 5);
	expect(view(some)).toMatch(/✓ as it stands, 4 of 4 read/);
	expect(view(some)).toMatch(/▸ Sub 2 5\.6 ms later.*, 1 of 4/s);
	const kept = walked(some);
	expect(blendOf(kept).pair!.status).toBe('kept');
	expect(view(kept)).toContain('✓ Kept between the subs');
	expect(idsIn(kept)).not.toContain('bass:way');
	const press = bassPage.press(
		kept,
		bassPage.start(kept),
		{key: 'enter'},
		{decidedAt: takenAt, walk: factsOf(kept)},
	);
	expect(press).toEqual({kind: 'go', promptId: 'dialIn'});
	const typedIn = withDecided(kept, '2026-04-18T11:00:00Z');
	// What stands now is asked anew: readings under the old set would count for nothing.
	expect(promptIn(typedIn, 'bass:set')).toMatchObject({isAnswered: false});
	const onwards = answer(typedIn, 'bass:set', '1');
	expect(promptIn(onwards, 'bass:set')).toMatchObject({isAnswered: true});
	expect(idsIn(onwards)).toContain('bass:way');
	expect(idsIn(onwards).filter(id => id.startsWith('bass:tone '))).toHaveLength(27);
});

test.each([40, 80, 120])('the page keeps to its size at %i columns', columns => {
	for (const profile of [started(), walked(chosen(), 5), walked(chosen())]) {
		const lines = view(profile, columns, 20).split('\n');
		expect(lines.length).toBeLessThanOrEqual(20);
		for (const line of lines) expect(cellWidth(line)).toBeLessThanOrEqual(columns);
	}
});
