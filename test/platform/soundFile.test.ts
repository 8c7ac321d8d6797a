import {spawnSync} from 'node:child_process';
import {mkdirSync, mkdtempSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {afterAll, beforeAll, expect, test} from 'vitest';
import {decodeSound, readSoundFile} from '../../source/platform/soundFile.ts';

let folder: string;
beforeAll(() => {
	folder = mkdtempSync(join(tmpdir(), 'sound-'));
});
afterAll(() => rmSync(folder, {recursive: true}));

test('a file that is missing, empty or a folder is refused in a sentence', () => {
	expect(() => readSoundFile(join(folder, 'none.wav'))).toThrow('none.wav');
	writeFileSync(join(folder, 'empty.wav'), '');
	expect(() => readSoundFile(join(folder, 'empty.wav'))).toThrow('is empty');
	mkdirSync(join(folder, 'evening.wav'));
	expect(() => readSoundFile(join(folder, 'evening.wav'))).toThrow('evening.wav');
});

test('bytes that no decoder knows are no sound, and nothing is thrown', async () => {
	for (const text of ['', 'not a recording', 'ID3\u0003garbage', 'OggS then nothing', 'fLaC'])
		expect(await decodeSound(new TextEncoder().encode(text))).toBeUndefined();
});

const python = '/usr/bin/python3';
const hasLibrary = spawnSync(python, ['-c', 'import soundfile']).status === 0;
const skipped = hasLibrary ? '' : ' (skipped: python3-soundfile is not installed here)';

// Written by libsndfile. FLAC keeps every bit; Vorbis and MP3 keep a tone within their own noise.
test.skipIf(!hasLibrary).each([
	['FLAC', 'PCM_16', 0.0001],
	['OGG', 'VORBIS', 0.02],
	['MP3', 'MPEG_LAYER_III', 0.02],
])(`what libsndfile saves as %s is decoded${skipped}`, async (container, subtype, tolerance) => {
	const path = join(folder, `tone.${container.toLowerCase()}`);
	const script = `
import numpy, soundfile, sys
x = 0.5*numpy.sin(2*numpy.pi*997*numpy.arange(44100)/44100)
with soundfile.SoundFile(sys.argv[1], 'w', 44100, 1, format=sys.argv[2], subtype=sys.argv[3]) as f:
    for i in range(0, len(x), 4096): f.write(x[i:i+4096])
`;
	const run = spawnSync(python, ['-c', script, path, container, subtype], {encoding: 'utf8'});
	expect(run.stderr).toBe('');
	const decoded = (await decodeSound(readSoundFile(path).bytes))!;
	expect(decoded.sampleRateHz).toBe(44_100);
	const samples = decoded.channels[0]!;
	expect(Math.abs(samples.length - 44_100)).toBeLessThan(3000);
	// Level and frequency of the middle, by its projection on the tone.
	let [cosine, sine] = [0, 0];
	for (let index = 10_000; index < 30_000; index += 1) {
		cosine += samples[index]! * Math.cos((2 * Math.PI * 997 * index) / 44_100);
		sine += samples[index]! * Math.sin((2 * Math.PI * 997 * index) / 44_100);
	}

	expect(Math.abs((2 * Math.hypot(cosine, sine)) / 20_000 - 0.5)).toBeLessThan(tolerance);
});

// Encoded by ffmpeg (`recorders/make.sh`), as phones save it: the tone comes back in level and frequency.
test.each(['tone.m4a', 'tone.opus'])('%s of a real encoder is decoded', async name => {
	const {bytes} = readSoundFile(join(import.meta.dirname, 'recorders', name));
	const {channels, sampleRateHz} = (await decodeSound(bytes))!;
	const samples = channels[0]!;
	expect(sampleRateHz).toBe(48_000);
	// Encoders put up to a few thousand samples before and behind.
	expect(Math.abs(samples.length - 48_000)).toBeLessThan(4000);
	let [cosine, sine] = [0, 0];
	for (let index = 12_000; index < 36_000; index += 1) {
		cosine += samples[index]! * Math.cos((2 * Math.PI * 997 * index) / 48_000);
		sine += samples[index]! * Math.sin((2 * Math.PI * 997 * index) / 48_000);
	}

	// Lossy coding at these rates moves a lone tone by a few percent at most.
	expect(Math.abs((2 * Math.hypot(cosine, sine)) / 24_000 - 0.5)).toBeLessThan(0.03);
});
