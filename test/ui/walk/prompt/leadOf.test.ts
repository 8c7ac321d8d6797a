import {expect, test} from 'vitest';
import {draftRound} from '../../../../source/ui/screens/draft.ts';
import {leadOf} from '../../../../source/ui/walk/prompt/leadOf.ts';

test('a question keeps its own mark before the answer, anything else gets a colon', () => {
	expect(leadOf('Which speakers?')).toBe('Which speakers?');
	expect(leadOf('A name:')).toBe('A name:');
	expect(leadOf('Width of the room')).toBe('Width of the room:');
});

test.each([
	['ft', 'ft'],
	['FT-IN', 'ft-in'],
	['m', 'm'],
	['3', 'm'],
])('how the tape is marked may be typed as %s', (typed, unit) => {
	const unitPrompt = draftRound.prompts({date: '2026-04-18'}).find(({id}) => id === 'new:unit')!;
	expect(unitPrompt.take({date: '2026-04-18'}, typed, {} as never)).toMatchObject({
		kind: 'taken',
		next: {lengthUnit: unit},
	});
});
