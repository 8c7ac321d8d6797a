import {expect, test} from 'vitest';
import {remarkOnNetwork} from '../../../source/study/survey/remarkOnNetwork.ts';
import {bareProfile, thoroughEnds, withReadings} from './room.ts';

const without = (from: string, to: string) =>
	withReadings(
		bareProfile(),
		thoroughEnds(bareProfile()).filter(ends => !(ends[0] === from && ends[1] === to)),
		{seed: 21},
	);

test('remarkOnNetwork has nothing to say of the first reading of all', () => {
	expect(remarkOnNetwork(bareProfile(), {from: 'FL', to: 'sofa', metres: 3.4})).toEqual([]);
});

test('remarkOnNetwork asks for the unit when a reading is longer than any room', () => {
	expect(remarkOnNetwork(bareProfile(), {from: 'FL', to: 'sofa', metres: 112})[0]).toMatchObject({
		kind: 'problem',
		code: 'tape-too-long',
	});
});

test('remarkOnNetwork gives a sentence to a reading from a thing to itself', () => {
	expect(remarkOnNetwork(bareProfile(), {from: 'FL', to: 'FL', metres: 1})[0]).toMatchObject({
		kind: 'problem',
		code: 'tape-same-ends',
	});
});

test('remarkOnNetwork confirms a reading that the others expect', () => {
	const [remark] = remarkOnNetwork(without('FL', 'sofa'), {from: 'FL', to: 'sofa', metres: 3.438});
	expect(remark).toMatchObject({kind: 'note', code: 'tape-confirmed', about: 'FL'});
	expect(remark!.text).toMatch(/^The other readings give 3\.4\d m: it fits\.$/);
});

test('remarkOnNetwork names a reading that is a foot too long while the tape is still in hand', () => {
	const [remark] = remarkOnNetwork(without('FL', 'sofa'), {from: 'FL', to: 'sofa', metres: 3.743});
	expect(remark).toMatchObject({kind: 'problem', code: 'tape-blunder', about: 'FL'});
	expect(remark!.text).toContain('one foot too long (then 3.44 m)');
});

test('remarkOnNetwork takes a reading that is in the profile already as the new one', () => {
	const profile = without('FL', 'sofa');
	const reading = {from: 'FL', to: 'sofa', metres: 3.743};
	const inside = {...profile, tape: [...profile.tape!, reading]};
	expect(remarkOnNetwork(inside, reading)).toEqual(remarkOnNetwork(profile, reading));
});
