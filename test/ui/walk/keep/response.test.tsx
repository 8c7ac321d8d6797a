import {render} from 'ink-testing-library';
import type {ReactElement} from 'react';
import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import type {Press} from '../../../../source/ui/keys/press.ts';
import {keepPage} from '../../../../source/ui/walk/keep/keepPage.tsx';
import {responseLines} from '../../../../source/ui/walk/keep/response.tsx';
import {openPage} from '../../../../source/ui/walk/page.ts';
import {factsOf} from '../../../../source/ui/walk/stops.ts';
import {madeRecordings} from '../../../study/hearing/recordedCurves.ts';
import {den} from '../../rooms.ts';

const recorded: Profile = {
	...den(),
	...madeRecordings([
		{source: 'FL', seat: 'seat1', round: 'first', dipDb: 12, decaySeconds: 0.4},
		{source: 'FR', seat: 'seat1', round: 'first', dipDb: 9},
		{source: 'FL', seat: 'seat1', round: 'proof', dipDb: 5, decaySeconds: 0.3},
	]),
};

/** The page after some keys, and its footer. */
function pageAfter(profile: Profile, presses: readonly Press[]) {
	const walk = factsOf(profile);
	let page = openPage(keepPage, keepPage.start(profile));
	for (const press of presses) {
		const pressed = page.press(profile, press, {decidedAt: '2026-04-19T20:00:00Z', walk});
		if (pressed.kind !== 'state') throw new Error(`The key made ${pressed.kind}.`);
		page = pressed.state;
	}

	const {lastFrame, unmount} = render(page.view({profile, columns: 80, height: 22, walk}) as ReactElement);
	const frame = lastFrame()!;
	unmount();
	return {frame, keys: page.keys(profile).map(([, does]) => does)};
}

const key = (text: string): Press => ({key: 'character', text});

test('r draws before and after of a line with figures, n the next line, Esc goes back', () => {
	const {frame} = pageAfter(recorded, [key('r')]);
	expect(frame).toMatch(/Front left at .*, 1 of 2/);
	expect(frame).toMatch(/[\u2801-\u28FF]{5}/);
	expect(frame).toMatch(/before, 2026-04-18: dips in the bass −1[01] dB at 6[234] Hz; dies away in 0\.40 s/);
	expect(frame).toMatch(/after, 2026-04-19: dips in the bass −[45] dB at 6[234] Hz; dies away in 0\.30 s/);
	expect(frame.split('\n').length).toBeLessThanOrEqual(22);
	expect(pageAfter(recorded, [key('r'), key('n')]).frame).toMatch(/Front right at .*, 2 of 2/);
	expect(pageAfter(recorded, [key('r'), key('n'), key('n')]).frame).toMatch(/Front left at .*, 1 of 2/);
	expect(pageAfter(recorded, [key('r'), {key: 'escape'}]).frame).toContain('is kept');
});

test('for a screen reader the curves come in words', () => {
	const lines = responseLines(recorded, 0, {columns: 80, height: 22, isInWords: true});
	const text = lines.map(line => line.text).join(' ');
	expect(text).not.toMatch(/[\u2801-\u28FF]/);
	expect(text).toMatch(/before, 2026-04-18: .*dB at 63 Hz/);
});

test('without a recording the footer does not offer it, and r says where one is made', () => {
	expect(pageAfter(recorded, []).keys).toContain('response');
	expect(pageAfter(den(), []).keys).not.toContain('response');
	expect(pageAfter(den(), [key('r')]).frame).toContain('No response was recorded yet.');
});
