import {expect, test} from 'vitest';
import type {Profile} from '../../../source/profile/types.ts';
import {readEnd, signalDirection} from '../../../source/study/wiring/ends.ts';

const profile = {
	channels: [{id: 'FL'}, {id: 'LFE1'}],
	subs: [{id: 'sub1', name: 'Sub', fedBy: 'LFE1'}],
	bassProcessor: {outputs: ['out1']},
	wiring: {outlets: [{id: 'strip', name: 'Strip', kind: 'strip'}]},
} as unknown as Profile;

test('an end is a box and its terminal, which may hold a slash itself', () => {
	expect(readEnd('receiver/FL')).toEqual({box: 'receiver', terminal: 'FL'});
	expect(readEnd('sub1/line/left')).toEqual({box: 'sub1', terminal: 'line/left'});
});

test.each([
	['receiver/FL', 'gives'],
	['receiver/HDMI', 'unknown'],
	['processor/out1', 'gives'],
	['processor/in 2', 'takes'],
	['processor/inverter', 'unknown'],
	['FL/speaker', 'takes'],
	['sub1/line', 'takes'],
	['strip/3', 'gives'],
	['shelf/1', 'unknown'],
])('%s: %s', (end, direction) => {
	expect(signalDirection(profile, end)).toBe(direction);
});
