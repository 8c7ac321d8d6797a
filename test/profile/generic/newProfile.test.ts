import {expect, test} from 'vitest';
import {checkProfile} from '../../../source/profile/file/parse.ts';
import {genericBassProcessorNames} from '../../../source/profile/generic/bassProcessors.ts';
import {layoutNames, layouts} from '../../../source/profile/generic/layouts.ts';
import {newProfile} from '../../../source/profile/generic/newProfile.ts';
import {genericReceiverNames} from '../../../source/profile/generic/receivers.ts';

const plain = {name: 'New', date: '2026-04-18', layout: '5.1.4'} as const;

test.each(layoutNames)('layout %s has as many channels as its name says', name => {
	const total = name.split('.').reduce((sum, part) => sum + Number(part), 0);
	expect(new Set(layouts[name]).size).toBe(total);
	expect(layouts[name].filter(id => id.startsWith('LFE'))).toHaveLength(Number(name.split('.')[1]));
	expect(layouts[name].filter(id => id.startsWith('Tp'))).toHaveLength(Number(name.split('.')[2] ?? 0));
});

test.each(layoutNames.flatMap(layout => genericReceiverNames.map(receiver => [layout, receiver] as const)))(
	'newProfile is sound for %s on %s',
	(layout, receiver) => {
		for (const bassProcessor of [undefined, ...genericBassProcessorNames]) {
			expect(
				checkProfile(
					newProfile({...plain, layout, receiver, ...(bassProcessor ? {bassProcessor} : {}), seats: 3}),
				),
			).toEqual([]);
		}
	},
);

test('newProfile puts each sub on an output of its own', () => {
	const {subs} = newProfile({...plain, bassProcessor: 'digital', subs: 2});
	expect(subs!.map(({fedBy, processorOutput}) => [fedBy, processorOutput])).toEqual([
		['LFE1', 'A'],
		['LFE1', 'B'],
	]);
});

test('newProfile refuses subs without a low-frequency channel, too many subs, and no seat', () => {
	expect(() => newProfile({...plain, layout: '2.0', subs: 1})).toThrow('no low-frequency channel');
	expect(() => newProfile({...plain, subs: 5})).toThrow('subs must be 0 to 4, got 5');
	expect(() => newProfile({...plain, seats: 0})).toThrow('seats must be 1 to 20, got 0');
});

test('profiles of the same receiver share no data', () => {
	const first = newProfile({...plain, receiver: 'fine-metric'});
	first.receiver!.crossover.choicesHertz.push(300);
	expect(newProfile({...plain, receiver: 'fine-metric'}).receiver!.crossover.choicesHertz).not.toContain(300);
});
