import {expect, test} from 'vitest';
import {channelLatency, subLatency, totalLatency} from '../../../source/profile/ask/latency.ts';
import {sampleProfile} from '../sample.ts';

test('a sub is late by the link before the processor, the processor and its own electronics', () => {
	const profile = sampleProfile();
	const sub = {...profile.subs![0]!, latencyMs: 2.5};
	// 1 ms at LFE1, 4 ms in the processor, 2.5 ms in the sub itself.
	expect(subLatency(profile, sub).map(({milliseconds}) => milliseconds)).toEqual([1, 4, 2.5]);
	expect(totalLatency(subLatency(profile, sub))).toBe(7.5);
});

test('a sub that hangs on the receiver directly has nothing of the processor', () => {
	const profile = sampleProfile();
	const {processorOutput: _, ...direct} = profile.subs![0]!;
	expect(totalLatency(subLatency(profile, direct))).toBe(1);
});

test('a channel without a latency, or one that is not there, is late by nothing', () => {
	expect(channelLatency(sampleProfile(), 'FL')).toEqual([]);
	expect(totalLatency(channelLatency(sampleProfile(), 'BC'))).toBe(0);
});

test('a latency is told by where it is known to arise', () => {
	const profile = sampleProfile();
	const channels = [{id: 'FL' as const, latencyMs: 17, latencyFrom: 'wireless link'}];
	expect(channelLatency({...profile, channels}, 'FL')).toEqual([{at: 'wireless link', milliseconds: 17}]);
});
