import {Box, renderToString} from 'ink';
import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {prove} from '../../../../source/study/calibration/proof/prove.ts';
import {withDecided, withTick} from '../../../../source/ui/walk/dialIn/decide.ts';
import {proofPrompts} from '../../../../source/ui/walk/proof/proof.ts';
import {planOf} from '../../../../source/ui/walk/proof/proofOf.ts';
import {proofPage} from '../../../../source/ui/walk/proof/proofPage.tsx';
import {factsOf} from '../../../../source/ui/walk/stops.ts';
import {exampleProfile} from '../dialIn/exampleProfile.ts';

const typedIn = withTick(withDecided(exampleProfile(), '2026-04-18T10:00:00Z'), 'set1', 'FL', true);
const singles = planOf(typedIn).filter(
	({source, shows}) => source.length === 1 && shows === 'level' && !source[0]!.startsWith('sub'),
);

/** A recording of all speakers with the set in force, some of them off by so much; its own zero is anywhere. */
function recorded(offDb: Readonly<Record<string, number>> = {}, inForce = 'set1'): Profile {
	const {seat} = singles[0]!;
	return {
		...typedIn,
		recordings: [
			{id: 'r1', file: 'a.wav', sha256: 'a', atSeconds: 0, seat, round: 'proof', inForce, clockPpm: 0},
		],
		responses: singles.map(({source, predicted}) => ({
			source: source[0]!,
			seat,
			recording: 'r1',
			sha256: source[0]!,
			levelDb: predicted.value - 113 + (offDb[source[0]!] ?? 0),
		})),
	};
}

const openIds = (profile: Profile) =>
	proofPrompts(profile)
		.filter(({isAnswered}) => !isAnswered)
		.map(({id}) => id);

test('a recording with the settings in force closes the rows of the speakers, and the meter is asked for the rest', () => {
	expect(singles.length).toBeGreaterThanOrEqual(3);
	const before = prove(typedIn);
	const after = prove(recorded());
	expect(before.verdict).toBe('none');
	expect(after.recorded!.map(({key}) => key).sort()).toEqual(singles.map(({key}) => key).sort());
	expect(after.missing).toHaveLength(before.missing.length - singles.length);
	expect(after.verdict).toBe(after.missing.length === 0 ? 'met' : 'open');
	expect(openIds(recorded())).toHaveLength(openIds(typedIn).length - singles.length);
});

test('a speaker that is off in the recording stays open, the others are closed', () => {
	const off = singles[0]!;
	const result = prove(recorded({[off.source[0]!]: 4}));
	expect(result.missing.map(({key}) => key)).toContain(off.key);
	expect(result.recorded).toHaveLength(singles.length - 1);
});

test('a recording of other settings closes nothing', () => {
	expect(prove(recorded({}, 'an older one')).recorded).toBeUndefined();
});

test('the page tells what the recording closed, and r records', () => {
	const profile = recorded();
	const state = proofPage.start(profile);
	const text = renderToString(
		<Box>{proofPage.view({profile, state, columns: 80, height: 40, walk: factsOf(profile)})}</Box>,
		{columns: 80},
	);
	expect(text).toMatch(/recording made with these settings closes \d of them/);
	const world = {decidedAt: '2026-04-19T10:00:00Z', walk: factsOf(profile)};
	expect(proofPage.press(profile, state, {key: 'character', text: 'r'}, world)).toEqual({
		kind: 'hear',
		round: 'proof',
	});
});
