import {Box, renderToString} from 'ink';
import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {cellWidth} from '../../../../source/report/fitCells.ts';
import {withDecided, withTick} from '../../../../source/ui/walk/dialIn/decide.ts';
import {situationOf} from '../../../../source/ui/walk/dialIn/situation.ts';
import {keepLines} from '../../../../source/ui/walk/keep/lines.ts';
import {nextOf} from '../../../../source/ui/walk/keep/next.ts';
import {planOf} from '../../../../source/ui/walk/proof/proofOf.ts';
import {proofPage} from '../../../../source/ui/walk/proof/proofPage.tsx';
import {factsOf} from '../../../../source/ui/walk/stops.ts';
import {readAloud} from '../../screenReader.ts';
import {exampleProfile} from '../dialIn/exampleProfile.ts';

const decided = withDecided(exampleProfile(), '2026-04-18T10:00:00Z');
const typedIn = withTick(decided, 'set1', 'FL', true);

/** A second round as predicted, but for some channels. */
function round(aboveDb: Readonly<Record<string, number>> = {}): Profile {
	const readings = planOf(typedIn).flatMap(({source, seat, signal, weighting, predicted, name}) =>
		// Four looks settle a row, wherever they lie.
		[0, 0, 0, 0].map(() => ({
			source: source.length === 1 ? source[0]! : [...source],
			seat,
			signal,
			weighting,
			decibels: predicted.value + (aboveDb[name] ?? 0),
			round: 'proof' as const,
			inForce: 'set1',
		})),
	);
	return {...typedIn, meter: [...typedIn.meter!, ...readings]};
}

const view = (profile: Profile, columns: number, height: number) => (
	<Box>
		{proofPage.view({profile, state: proofPage.start(profile), columns, height, walk: factsOf(profile)})}
	</Box>
);
const draw = (profile: Profile, columns = 80, height = 60) =>
	renderToString(view(profile, columns, height), {columns});
const enter = (profile: Profile) =>
	proofPage.press(
		profile,
		proofPage.start(profile),
		{key: 'enter'},
		{decidedAt: '2026-04-19T10:00:00Z', walk: factsOf(profile)},
	);

test('the page says what comes first when nothing was typed in', () => {
	expect(draw(decided)).toContain('Nothing to prove yet');
	expect(enter(decided)).toEqual({kind: 'next'});
});

test('the page leads to the first reading', () => {
	expect(draw(typedIn)).toMatch(/\d readings with the new settings in force/);
	expect(enter(typedIn)).toMatchObject({kind: 'go', promptId: expect.stringMatching(/^proof:/)});
});

test('a round as predicted is met, and Enter goes on', () => {
	expect(draw(round())).toContain('✓ Met');
	expect(draw(round())).toMatch(/Front centre .* 0\.0 +met/);
	expect(enter(round())).toEqual({kind: 'next'});
});

test('a wrong sign is named, with the check that settles it', () => {
	const trim = typedIn.settings!.at(-1)!.channels.FC!.trimDb!.stepped;
	expect(Math.abs(trim)).toBeGreaterThan(1);
	const text = draw(round({'Front centre': -2 * trim}));
	expect(text).toContain('! Missed: Front centre');
	expect(text).toMatch(/sign/);
	expect(text).toMatch(/(Certain|(Likely|Possible), \d+ %):/);
	const rows = text.split('\n').filter(line => /\b(met|missed)$/.test(line));
	expect(rows[0]).toContain('Front centre');
});

test('a reading that is not clear keeps the stop open, and Enter goes to it', () => {
	const whole = round();
	const unclear = {
		...whole,
		// One look only, beyond the limit: a second one decides.
		meter: whole.meter!.filter(({round: of, source}) => of !== 'proof' || source !== 'FC'),
	};
	const item = planOf(typedIn).find(({name}) => name === 'Front centre')!;
	const look = {...whole.meter!.findLast(({source}) => source === 'FC')!, decibels: item.predicted.value - 3};
	const profile = {...unclear, meter: [...unclear.meter, look]};
	expect(draw(profile)).toContain('Open: 1 to look at again');
	expect(enter(profile)).toMatchObject({kind: 'go', promptId: `proof:${item.key}`});
	const stateOf = (of: Profile) => factsOf(of).status.find(({id}) => id === 'proof')!.state;
	expect(stateOf(profile)).not.toBe('done');
	expect(stateOf(round())).toBe('done');
	expect(stateOf(round({'Front centre': 4}))).toBe('missed');
	expect(keepLines(profile, 80, factsOf(profile)).map(({text}) => text)).toContainEqual(
		expect.stringContaining('Proof: open, 1 to look at again'),
	);
	const situation = situationOf(profile);
	if (situation.kind !== 'decided') throw new Error('no set holds');
	const ticked = situation.items.reduce<Profile>((now, {id}) => withTick(now, 'set1', id, true), profile);
	expect(nextOf(ticked, factsOf(ticked).status)).toMatchObject({promptId: 'proof'});
});

test('a moved master volume is told and taken out', () => {
	const names = planOf(typedIn).map(({name}) => name);
	const text = draw(round(Object.fromEntries(names.map(name => [name, 3]))));
	expect(text).toContain('The speakers read +3.0 dB');
	expect(text).toContain('✓ Met');
});

test.each([40, 60, 80, 120, 160])('the page keeps to its size at %i columns', columns => {
	for (const profile of [decided, typedIn, round({'Front centre': 4})]) {
		for (const height of [5, 12, 20]) {
			const lines = draw(profile, columns, height).split('\n');
			expect(lines.length).toBeLessThanOrEqual(height);
			for (const line of lines) expect(cellWidth(line)).toBeLessThanOrEqual(columns);
		}
	}
});

test('the page is read aloud in words', () => {
	expect(readAloud(view(round(), 80, 60), 120)).toContain('Met');
});
