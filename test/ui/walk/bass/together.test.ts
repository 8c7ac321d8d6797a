import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {togetherPrompts} from '../../../../source/ui/walk/bass/together.ts';
import {withDecided, withTick} from '../../../../source/ui/walk/dialIn/decide.ts';
import {solutionOf} from '../../../../source/ui/walk/solution.ts';
import {exampleProfile} from '../dialIn/exampleProfile.ts';

const at = {takenAt: '2026-04-19T10:00:00.000Z'};

/** The example room with a second sub behind the same processor, each read alone. */
function twoSubs(): Profile {
	const profile = exampleProfile();
	const [first] = profile.subs!;
	const level = profile.meter!.find(({source}) => source === first!.id)!;
	return {
		...profile,
		subs: [first!, {...first!, id: 'sub2', name: 'Second sub', processorOutput: 'B'}],
		bassProcessor: {...profile.bassProcessor!, outputs: ['A', 'B']},
		tape: [...profile.tape!, {from: 'sub2', to: 'seat1', metres: 2.6}],
		meter: [...profile.meter!, {...level, source: 'sub2'}],
	};
}

const codes = (profile: Profile) => solutionOf(profile).remarks.map(({code}) => code);

test('nothing is asked before settings are typed in, nor of one sub', () => {
	expect(togetherPrompts(twoSubs())).toEqual([]);
	const one = withTick(withDecided(exampleProfile(), '2026-04-18T10:00:00Z'), 'set1', 'FL', true);
	expect(togetherPrompts(one)).toEqual([]);
});

test('after Dial-in all subs together come by themselves, and the answer ends the assumption', () => {
	const typedIn = withTick(withDecided(twoSubs(), '2026-04-18T10:00:00Z'), 'set1', 'FL', true);
	expect(codes(typedIn)).toContain('coherent-sum-assumed');
	const [asked] = togetherPrompts(typedIn);
	expect(asked).toMatchObject({id: 'bass:together', isOffered: true, isAnswered: false});
	const taken = asked!.take(typedIn, '74.1', at);
	if (taken.kind !== 'taken') throw new Error('not taken');
	expect(taken.next.meter!.at(-1)).toMatchObject({source: ['sub1', 'sub2'], inForce: 'set1', round: 'first'});
	expect(codes(taken.next)).not.toContain('coherent-sum-assumed');
	expect(togetherPrompts(taken.next)).toMatchObject([{isAnswered: true}]);
});
