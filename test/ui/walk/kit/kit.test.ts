import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {kitPrompts} from '../../../../source/ui/walk/kit/kit.ts';
import {den} from '../../rooms.ts';

const promptOf = (profile: Profile, id: string) =>
	kitPrompts(profile).find(candidate => candidate.id === id)!;

function answer(profile: Profile, id: string, text: string): Profile {
	const taken = promptOf(profile, id).take(profile, text, {takenAt: ''});
	if (taken.kind !== 'taken') throw new Error(`${id} ${text}: ${taken.kind}`);
	return taken.next;
}

test('a data sheet is asked once for left and right and goes to both', () => {
	const profile = answer(den(), 'kit:lowLimit:FL', '55');
	expect(profile.channels.filter(({speaker}) => speaker).map(({id}) => id)).toEqual(['FL', 'FR']);
	expect(promptOf(den(), 'kit:lowLimit:FR')).toBeUndefined();
	expect(promptOf(den(), 'kit:lowLimit:FL').question).toBe('Front left and right: low limit');
});

test('another kind of receiver is chosen whole, and each step can be corrected', () => {
	const profile = answer(den(), 'kit:receiver', '5');
	expect(profile.receiver).toMatchObject({timing: {kind: 'delay', stepMs: 0.1}});
	expect(answer(profile, 'kit:timing:stepMs', '0.5').receiver).toMatchObject({timing: {stepMs: 0.5}});
	expect(answer(profile, 'kit:trim:stepDb', '1').receiver!.trim.stepDb).toBe(1);
	expect(answer(profile, 'kit:crossover:choices', '120 80;60 80Hz').receiver!.crossover.choicesHertz).toEqual(
		[60, 80, 120],
	);
});

test('a list of crossover frequencies with a word in it is refused whole', () => {
	expect(promptOf(den(), 'kit:crossover:choices').take(den(), '60 eighty', {takenAt: ''}).kind).toBe('no');
});

test('a bass processor gives each sub an output, and none takes it away again', () => {
	const profile = answer(den(), 'kit:processor', '3');
	expect(profile).toMatchObject({bassProcessor: {latencyMs: 4}, subs: [{id: 'sub1', processorOutput: 'A'}]});
	expect(answer(profile, 'kit:processor:latency', '5.5').bassProcessor!.latencyMs).toBe(5.5);
	const without = answer(profile, 'kit:processor', '1');
	expect(without).not.toHaveProperty('bassProcessor');
	expect(without.subs![0]).not.toHaveProperty('processorOutput');
});

test('values out of what a box can have are refused in words', () => {
	const profile = answer(den(), 'kit:processor', '3');
	for (const [id, text] of [
		['kit:processor:latency', '-1'],
		['kit:latency:FL', '-3'],
		['kit:trim:stepDb', '0'],
		['kit:timing:stepMetres', '0'],
		['kit:tapeStep', '2 m'],
		['kit:meterOffset', '99'],
		['kit:subOutputs', '1.5'],
		['kit:lowLimit:FL', '0'],
	] as const) {
		expect(promptOf(profile, id).take(profile, text, {takenAt: ''}), id).toMatchObject({kind: 'no'});
	}
});

test('how the tape is marked and how wire is sold are asked by themselves', () => {
	expect(answer(den(), 'kit:tapeShownIn', 'cm').kit).toMatchObject({tapeShownIn: 'cm'});
	const metric = answer(den(), 'kit:wireSystem', '1');
	expect(metric.kit).toMatchObject({wireSystem: 'metric'});
	expect(promptOf(metric, 'kit:wireSystem').values).toEqual(['Square millimetres']);
});

test.each(['16 1/2in x 18in', '16.5in / 18in', '41.91 cm × 45.72 cm'])(
	'the size of a box is two lengths with an x or a stroke between them, fractions of an inch and all: %s',
	text => {
		const taken = promptOf(den(), 'kit:size:FL').take(den(), text, {takenAt: ''});
		if (taken.kind !== 'taken') throw new Error(`${text} was not taken`);
		// An inch is 25.4 mm, exact.
		const speaker = taken.next.channels.find(({id}) => id === 'FL')!.speaker!;
		expect(speaker.boxWidthMetres).toBeCloseTo(0.4191, 6);
		expect(speaker.boxDepthMetres).toBeCloseTo(0.4572, 6);
	},
);
