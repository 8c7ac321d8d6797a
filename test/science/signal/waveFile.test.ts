import {spawnSync} from 'node:child_process';
import {existsSync, mkdtempSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join, resolve} from 'node:path';
import {expect, test} from 'vitest';
import wavefile from 'wavefile';
import {bandNoise} from '../../../source/science/signal/bandNoise.ts';
import {crestDb} from '../../../source/science/signal/level.ts';
import {seededRandom} from '../../../source/science/signal/seededRandom.ts';
import {waveFile} from '../../../source/science/signal/waveFile.ts';

type Format = {
	readonly fmt: {
		readonly audioFormat: number;
		readonly numChannels: number;
		readonly sampleRate: number;
		readonly bitsPerSample: number;
		readonly validBitsPerSample: number;
		readonly dwChannelMask: number;
		readonly subformat: readonly number[];
	};
};

const steps = Float64Array.of(0, 1, -1, 2, -2, 0.5, 2 ** -23, -(2 ** -23));

test('waveFile refuses no samples, and lengths that differ, and names the channel', () => {
	expect(() => waveFile({channels: [undefined], sampleRateHz: 48_000, mask: 0})).toThrow('got none');
	expect(() => waveFile({channels: [steps, Float64Array.of(1)], sampleRateHz: 48_000, mask: 3})).toThrow(
		'channels[1] must hold 8 samples, got 1',
	);
});

// The wavefile library, an implementation of its own, reads and writes the same.
test('waveFile is read by another library: format, mask, and every sample', () => {
	const bytes = waveFile({channels: [steps, undefined, steps], sampleRateHz: 48_000, mask: 0x7});
	const read = new wavefile.WaveFile(bytes);
	const {fmt} = read as unknown as Format;
	expect(fmt).toMatchObject({
		audioFormat: 0xfffe,
		numChannels: 3,
		sampleRate: 48_000,
		bitsPerSample: 24,
		validBitsPerSample: 24,
		dwChannelMask: 7,
	});
	const [first, second, third] = read.getSamples(false, Int32Array) as unknown as Int32Array[];
	expect([...first!]).toEqual([0, 8388607, -8388608, 8388607, -8388608, 4194304, 1, -1]);
	expect([...second!]).toEqual(new Array(8).fill(0));
	expect(third).toEqual(first);
});

test.each([
	[4, 0x33],
	[6, 0x3f],
	[8, 0x63f],
])(
	'waveFile writes the very bytes that the library writes for %i channels, but for the format tag',
	(count, mask) => {
		const channels = Array.from({length: count}, (_, index) => steps.map(value => value / (index + 2)));
		const library = new wavefile.WaveFile();
		const whole = channels.map(samples => samples.map(value => Math.round(value * 2 ** 23)));
		library.fromScratch(count, 48_000, '24', whole);
		(library as unknown as {fmt: {dwChannelMask: number}}).fmt.dwChannelMask = mask;
		const theirs = Buffer.from(library.toBuffer());
		// The library writes the extensible chunk under the tag of plain PCM; the specification asks for 0xfffe there.
		expect(theirs.readUInt16LE(20)).toBe(1);
		theirs.writeUInt16LE(0xfffe, 20);
		expect(Buffer.from(waveFile({channels, sampleRateHz: 48_000, mask})).equals(theirs)).toBe(true);
	},
);

test('waveFile pads an odd number of bytes, and counts it in the file but not in the data', () => {
	const bytes = waveFile({channels: [Float64Array.of(0.5)], sampleRateHz: 48_000, mask: 0});
	const view = new DataView(bytes.buffer);
	expect(bytes.length).toBe(72);
	expect(view.getUint32(4, true)).toBe(64);
	expect(view.getUint32(64, true)).toBe(3);
});

const python = '/usr/bin/python3';
const script = resolve(import.meta.dirname, '../../reference/waveSpectrum.py');
const hasScipy = existsSync(python) && spawnSync(python, ['-c', 'import scipy']).status === 0;

// scipy reads the file on its own and measures it by Welch's method; the same figures are checked in this process by
// test/science/signal/bandNoise.test.ts, so that nothing rests on scipy being there.
test.skipIf(!hasScipy).each([
	[355, 2818],
	[30, 80],
])(
	'waveFile holds noise from %i to %i Hz that scipy finds pink, in its band and at its level',
	(fromHertz, toHertz) => {
		const samples = bandNoise({
			fromHertz,
			toHertz,
			sampleRateHz: 48_000,
			length: 2 ** 18,
			levelDbfs: -20,
			crestDb: 11,
			random: seededRandom(3),
		});
		const folder = mkdtempSync(join(tmpdir(), 'roomtare-wave-'));
		try {
			const path = join(folder, 'noise.wav');
			writeFileSync(path, waveFile({channels: [samples], sampleRateHz: 48_000, mask: 0}));
			const ran = spawnSync(python, [script, path, String(fromHertz), String(toHertz)], {encoding: 'utf8'});
			expect(ran.stderr).toBe('');
			const found = JSON.parse(ran.stdout) as {
				rateHz: number;
				levelDbfs: number;
				crestDb: number;
				slopeDbPerOctave: number;
				lowEdgeHz: number;
				highEdgeHz: number;
				outsideDb: number;
			};
			expect(found.rateHz).toBe(48_000);
			expect(Math.abs(found.levelDbfs + 20)).toBeLessThan(0.001);
			expect(Math.abs(found.crestDb - crestDb(samples))).toBeLessThan(0.001);
			// −3.01 dB an octave; the window of the estimate blurs it by less than 0.1 dB.
			expect(Math.abs(found.slopeDbPerOctave + 3.01)).toBeLessThan(0.1);
			// The estimate resolves 0.37 Hz with four loops in a row.
			expect(Math.abs(found.lowEdgeHz - fromHertz)).toBeLessThan(0.6);
			expect(Math.abs(found.highEdgeHz - toHertz)).toBeLessThan(0.6);
			// 24-bit rounding noise against −20 dBFS.
			expect(found.outsideDb).toBeLessThan(-100);
		} finally {
			rmSync(folder, {recursive: true});
		}
	},
);
