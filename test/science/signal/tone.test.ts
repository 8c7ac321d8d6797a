import {expect, test} from 'vitest';
import {forwardReal} from '../../../source/science/signal/fourier.ts';
import {crestDb, levelDbfs} from '../../../source/science/signal/level.ts';
import {tone, wholePeriodsHertz} from '../../../source/science/signal/tone.ts';

test('tone refuses frequencies that a file cannot hold', () => {
	const at = (hertz: number) => tone({hertz, sampleRateHz: 48_000, length: 480, levelDbfs: -20});
	expect(() => at(0)).toThrow('hertz must lie between 0 and 24000 Hz, got 0');
	expect(() => at(24_000)).toThrow('got 24000');
});

test.each([
	[80, 80],
	[63.5, 63.6],
	[0.01, 0.2],
])('wholePeriodsHertz takes %f Hz to %f Hz in 5 s', (hertz, expected) => {
	expect(wholePeriodsHertz({hertz, sampleRateHz: 48_000, length: 240_000})).toBeCloseTo(expected, 9);
});

test.each([40, 63.6, 80, 100.2])(
	'tone of %f Hz has its level and loops: the next sample is the first',
	hertz => {
		const samples = tone({hertz, sampleRateHz: 48_000, length: 240_000, levelDbfs: -30});
		expect(levelDbfs(samples)).toBeCloseTo(-30, 8);
		expect(crestDb(samples)).toBeCloseTo(3.01, 2);
		// A sine obeys x[n+1] = 2·cos(ω)·x[n] − x[n−1]; so must it across the loop.
		const next = 2 * Math.cos((2 * Math.PI * hertz) / 48_000) * samples.at(-1)! - samples.at(-2)!;
		expect(Math.abs(next - samples[0]!)).toBeLessThan(1e-9);
	},
);

test('tone is one line of its spectrum', () => {
	const length = 2 ** 14;
	const spectrum = forwardReal(tone({hertz: 300, sampleRateHz: 48_000, length, levelDbfs: 0}));
	const bin = Math.round((wholePeriodsHertz({hertz: 300, sampleRateHz: 48_000, length}) * length) / 48_000);
	for (let k = 0; k <= length / 2; k += 1) {
		const size = Math.hypot(spectrum[2 * k]!, spectrum[2 * k + 1]!) / (length / 2);
		expect(size).toBeCloseTo(k === bin ? 1 : 0, 9);
	}
});
