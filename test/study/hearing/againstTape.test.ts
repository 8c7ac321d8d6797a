import {expect, test} from 'vitest';
import {sentenceOf} from '../../../source/report/said/said.ts';
import {sayIn} from '../../../source/report/said/say.ts';
import {againstTape, type ExpectedLine} from '../../../source/study/hearing/againstTape.ts';
import type {HeardLine} from '../../../source/study/hearing/heardPlaying.ts';

/** A line that sounds so late, as far as arrivals need one. */
const line = (channel: string, delayMs: number) =>
	({channel, isSub: false, delayMs, sigmaMs: 0.03}) as unknown as HeardLine;
const expected = (channel: string, flightMs: number): ExpectedLine => ({
	channel,
	flightMs,
	sigmaMs: 0.02,
	latencyMs: 0,
	delayMs: 0,
	isInverted: false,
});

test('of two lines that disagree with the tape nobody says which is late, and no latency is offered', () => {
	const {findings, offers} = againstTape(
		[line('FL', 0), line('FR', 17.3)],
		[expected('FL', 8), expected('FR', 8)],
		343,
	);
	expect(findings.map(({code, about}) => [code, ...about])).toEqual([['heard-one-late', 'FR', 'FL']]);
	expect(offers.latencies).toEqual([]);
	const said = sentenceOf(findings[0]!, sayIn({seats: []}));
	expect(said).toContain('17.3 ms');
	expect(said).toContain('which is off');
});

test('a third line tells which of them is late', () => {
	const {findings, offers} = againstTape(
		[line('FL', 0), line('FR', 17.3), line('FC', 0.05)],
		[expected('FL', 8), expected('FR', 8), expected('FC', 8)],
		343,
	);
	expect(findings.map(({code, about}) => [code, ...about])).toEqual([['heard-late', 'FR']]);
	expect(offers.latencies[0]).toMatchObject({channel: 'FR'});
	expect(offers.latencies[0]!.ms).toBeCloseTo(17.25, 6);
});

test('two lines that agree with the tape are not spoken of', () => {
	const {findings} = againstTape(
		[line('FL', 0), line('FR', 0.2)],
		[expected('FL', 8), expected('FR', 8.05)],
		343,
	);
	expect(findings).toEqual([]);
});
