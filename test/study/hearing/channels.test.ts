import {expect, test} from 'vitest';
import {againstTape, type ExpectedLine} from '../../../source/study/hearing/againstTape.ts';
import {codesOf, hearSamples, onlyPlaying, phone, recorded} from './simulated/hear.ts';
import {distanceOf, type Setup, speed} from './simulated/setup.ts';

const recorder = {...phone, rateHz: 32_000};
const five = ['FL', 'FR', 'FC', 'LFE1', 'SiL', 'SiR'];

function hear(setup: Setup) {
	const {samples} = recorded({size: 'all', channels: five, ...setup}, recorder);
	return onlyPlaying(hearSamples(samples, 32_000));
}

const twins: Readonly<Record<string, string>> = {FL: 'FR', FR: 'FL', SiL: 'SiR', SiR: 'SiL'};
const taped = (ids: readonly string[]): ExpectedLine[] =>
	ids.map(channel => ({
		channel,
		flightMs: (1000 * distanceOf(channel)) / speed,
		sigmaMs: 0.02,
		latencyMs: 0,
		delayMs: 0,
		isInverted: false,
		...(twins[channel] && {twin: twins[channel]}),
	}));
const mains = ['FL', 'FR', 'FC', 'SiL', 'SiR'];

test('a full round: every arrival within 0.01 ms of the geometry, a link of 17.3 ms found, a turned twin named', () => {
	const playing = hear({delayMs: {SiL: 17.3}, sign: {SiR: -1}});
	expect(codesOf(playing)).toEqual([]);
	for (const line of playing.lines) {
		if (line.isSub) continue;
		const link = line.channel === 'SiL' ? 17.3 : 0;
		const truth = (1000 * (distanceOf(line.channel) - distanceOf('FL'))) / speed + link;
		// Demanded is 0.05 ms; a phone's clock and noise leave a hundredth.
		expect(Math.abs(line.delayMs! - truth)).toBeLessThan(0.01);
		expect(line.polarity!.sign).toBe(line.channel === 'SiR' ? -1 : 1);
	}

	const {findings, offers} = againstTape(playing.lines, taped(mains), speed);
	expect(findings.map(({code, about}) => [code, ...about].join(' ')).sort()).toEqual([
		'heard-late SiL',
		'heard-twins-differ SiL SiR',
	]);
	expect(offers.latencies).toEqual([{channel: 'SiL', ms: expect.closeTo(17.3, 1)}]);
	// Without a tape reading the right surround gets its distance from its sound.
	const untaped = againstTape(
		playing.lines,
		[...taped(mains.slice(0, 4)), {...taped(['SiR'])[0]!, flightMs: undefined} as ExpectedLine],
		speed,
	);
	const [distance] = untaped.offers.distances;
	expect(distance!.metres).toBeCloseTo(distanceOf('SiR'), 1);
});

test('cables exchanged between two speakers are named as such', () => {
	const playing = hear({through: {SiL: [['FR', 1]], FR: [['SiL', 1]]}});
	const {findings} = againstTape(playing.lines, taped(mains), speed);
	expect(findings.map(({code, about}) => [code, ...about].join(' '))).toContain('heard-exchanged FR SiL');
});

test('a channel that is not plugged in is silent, the others are taken', () => {
	const playing = hear({through: {FC: []}, subs: []});
	expect(codesOf(playing)).toContain('heard-silent FC');
	expect(codesOf(playing)).toContain('heard-lfe-silent LFE1');
	expect(playing.lines.filter(({isSub, onset}) => !isSub && onset)).toHaveLength(4);
});

test('a player that folds everything to two channels is named', () => {
	const half = Math.SQRT1_2;
	const codes = codesOf(
		hear({
			through: {
				FC: [
					['FL', half],
					['FR', half],
				],
				SiL: [['FL', half]],
				SiR: [['FR', half]],
			},
		}),
	);
	expect(codes).toEqual(['heard-folded FC SiL SiR']);
});

test('a mode that spreads channels over several speakers is named', () => {
	const codes = codesOf(
		hear({
			through: {
				FL: [
					['FL', 1],
					['SiL', 0.7],
				],
				FR: [
					['FR', 1],
					['SiR', 0.7],
				],
			},
		}),
	);
	expect(codes.some(code => code.startsWith('heard-upmixed'))).toBe(true);
});

test('an LFE channel that is not raised by 10 dB is told from one that is', () => {
	expect(codesOf(hear({lfeGainDb: 0}))).toEqual(['heard-lfe-not-raised LFE1']);
});
