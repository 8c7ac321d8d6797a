import {spawnSync} from 'node:child_process';
import {mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import fc from 'fast-check';
import {expect, test} from 'vitest';
import {waveFile} from '../../../source/science/signal/waveFile.ts';
import {looksLikeWave, readWave, type Sound} from '../../../source/science/signal/waveRead.ts';

/** A WAV file by hand, chunk by chunk. */
function wave(
	chunks: ReadonlyArray<readonly [name: string, data: Uint8Array, stated?: number]>,
	kind = 'RIFF',
): Uint8Array {
	const parts: number[] = [...`${kind}\0\0\0\0WAVE`].map(letter => letter.charCodeAt(0));
	for (const [name, data, stated = data.length] of chunks) {
		parts.push(...[...name].map(letter => letter.charCodeAt(0)));
		parts.push(stated & 255, (stated >>> 8) & 255, (stated >>> 16) & 255, (stated >>> 24) & 255);
		parts.push(...data);
		if (data.length % 2 === 1) parts.push(0);
	}

	return Uint8Array.from(parts);
}

function format(
	tag: number,
	channels: number,
	rate: number,
	bits: number,
	frame = (bits / 8) * channels,
): Uint8Array {
	const bytes = new Uint8Array(16);
	const view = new DataView(bytes.buffer);
	view.setUint16(0, tag, true);
	view.setUint16(2, channels, true);
	view.setUint32(4, rate, true);
	view.setUint32(8, rate * frame, true);
	view.setUint16(12, frame, true);
	view.setUint16(14, bits, true);
	return bytes;
}

const pcm = Uint8Array.of(0, 0, 0xff, 0x7f, 0, 0x80, 0, 0x40);
const plain = format(1, 1, 44_100, 16);

function soundIn(bytes: Uint8Array): Sound {
	const read = readWave(bytes);
	if (read.kind !== 'sound') throw new Error(`no sound: ${read.fault.code}`);
	return read.sound;
}

test.each([
	['nothing at all', new Uint8Array(0), {code: 'noWave'}],
	[
		'a page of text',
		new TextEncoder().encode('<html>not a recording</html>'),
		{code: 'noWave', begins: '<htm'},
	],
	['big-endian RIFX', wave([['fmt ', plain]], 'RIFX'), {code: 'noWave', begins: 'RIFX'}],
	['no chunk', wave([]), {code: 'noFormat'}],
	['data before any format', wave([['data', pcm]]), {code: 'noFormat'}],
	[
		'a format cut short',
		wave([
			['fmt ', plain.subarray(0, 9)],
			['data', pcm],
		]),
		{code: 'shortFormat', bytes: 9},
	],
	[
		'zero channels',
		wave([
			['fmt ', format(1, 0, 44_100, 16)],
			['data', pcm],
		]),
		{code: 'noChannels'},
	],
	[
		'0 Hz',
		wave([
			['fmt ', format(1, 1, 0, 16)],
			['data', pcm],
		]),
		{code: 'wrongRate', sampleRateHz: 0},
	],
	[
		'a rate of 4 GHz',
		wave([
			['fmt ', format(1, 1, 2 ** 32 - 1, 16)],
			['data', pcm],
		]),
		{code: 'wrongRate'},
	],
	[
		'a compressed format',
		wave([
			['fmt ', format(0x55, 1, 44_100, 16)],
			['data', pcm],
		]),
		{code: 'compressed', format: 0x55},
	],
	[
		'12 bits',
		wave([
			['fmt ', format(1, 1, 44_100, 12)],
			['data', pcm],
		]),
		{code: 'wrongBits', bits: 12},
	],
	[
		'16-bit floats',
		wave([
			['fmt ', format(3, 1, 44_100, 16)],
			['data', pcm],
		]),
		{code: 'wrongBits', isFloat: true},
	],
	[
		'a frame that does not fit',
		wave([
			['fmt ', format(1, 2, 44_100, 16, 3)],
			['data', pcm],
		]),
		{code: 'wrongFrame', bytes: 3, expected: 4},
	],
	['no data', wave([['fmt ', plain]]), {code: 'noData'}],
	[
		'a data chunk with less than a frame',
		wave([
			['fmt ', plain],
			['data', Uint8Array.of(1)],
		]),
		{code: 'empty'},
	],
])('readWave names what is wrong with %s', (_, bytes, expected) => {
	const read = readWave(bytes);
	expect(read).toMatchObject({kind: 'fault', fault: expected});
});

const four = [0, 32_767 / 32_768, -1, 0.5];

test.each([
	[
		'an odd chunk with its padding',
		wave([
			['LIST', Uint8Array.of(1, 2, 3)],
			['fmt ', plain],
			['data', pcm],
		]),
	],
	[
		'a chunk that is not known',
		wave([
			['junk', new Uint8Array(10)],
			['fmt ', plain],
			['bext', new Uint8Array(4)],
			['data', pcm],
		]),
	],
	[
		'a data size of 0, as a recorder without power leaves it',
		wave([
			['fmt ', plain],
			['data', pcm, 0],
		]),
	],
	[
		'a data size of 0xFFFFFFFF, as a stream has it',
		wave([
			['fmt ', plain],
			['data', pcm, 0xffffffff],
		]),
	],
	[
		'a claim of 4 GiB',
		wave([
			['fmt ', plain],
			['data', pcm, 0xfffffff0],
		]),
	],
])('readWave reads on through %s', (_, bytes) => {
	const sound = soundIn(bytes);
	expect(sound.length).toBe(4);
	expect([...sound.read(0, 0, 4)]).toEqual(four);
});

test('an odd chunk without its padding does not hide the data behind it', () => {
	const whole = wave([
		['LIST', Uint8Array.of(1, 2, 3)],
		['fmt ', plain],
		['data', pcm],
	]);
	const at = 12 + 8 + 3;
	const unpadded = Uint8Array.from([...whole.subarray(0, at), ...whole.subarray(at + 1)]);
	expect([...soundIn(unpadded).read(0, 0, 4)]).toEqual(four);
});

test('a file cut in the middle of a frame gives its whole frames, and says so', () => {
	const cut = wave([
		['fmt ', plain],
		['data', pcm],
	]).subarray(0, -3);
	const read = readWave(cut);
	expect(read).toMatchObject({kind: 'sound', isCut: true, sound: {length: 2}});
});

test('RF64 takes its size from ds64', () => {
	const sizes = new Uint8Array(28);
	new DataView(sizes.buffer).setBigUint64(8, 8n, true);
	const bytes = wave(
		[
			['ds64', sizes],
			['fmt ', plain],
			['data', pcm, 0xffffffff],
			['LIST', new Uint8Array(8)],
		],
		'RF64',
	);
	expect(soundIn(bytes).length).toBe(4);
});

test('what lies outside the recording is silence', () => {
	const sound = soundIn(
		wave([
			['fmt ', plain],
			['data', pcm],
		]),
	);
	expect([...sound.read(0, -2, 8)]).toEqual([0, 0, ...four, 0, 0]);
	expect([...sound.read(0, 100, 2)]).toEqual([0, 0]);
});

test('what waveFile writes comes back to a step of 24 bits, channel by channel', () => {
	const left = Float64Array.from({length: 100}, (_, index) => Math.sin(index) * 0.9);
	const right = left.map(value => -value / 3);
	const sound = soundIn(waveFile({channels: [left, undefined, right], sampleRateHz: 48_000, mask: 7}));
	expect(sound).toMatchObject({sampleRateHz: 48_000, channelCount: 3, length: 100, bits: 24});
	for (const [channel, expected] of [left, new Float64Array(100), right].entries())
		for (const [index, value] of sound.read(channel, 0, 100).entries())
			expect(Math.abs(value - expected[index]!)).toBeLessThanOrEqual(2 ** -24);
});

test('floats that are no numbers are silence', () => {
	const data = new Uint8Array(16);
	const view = new DataView(data.buffer);
	for (const [index, value] of [0.25, Number.NaN, Number.POSITIVE_INFINITY, -0.5].entries())
		view.setFloat32(4 * index, value, true);
	expect([
		...soundIn(
			wave([
				['fmt ', format(3, 1, 96_000, 32)],
				['data', data],
			]),
		).read(0, 0, 4),
	]).toEqual([0.25, 0, 0, -0.5]);
});

test('no bytes make readWave throw, and what it reads is finite', () => {
	const whole = wave([
		['LIST', Uint8Array.of(1, 2, 3)],
		['fmt ', plain],
		['data', pcm],
	]);
	fc.assert(
		fc.property(
			fc.array(fc.tuple(fc.nat(whole.length - 1), fc.nat(255)), {maxLength: 8}),
			fc.nat(whole.length),
			(changes, length) => {
				const bytes = whole.slice(0, length);
				for (const [at, value] of changes) if (at < length) bytes[at] = value;
				const read = readWave(bytes);
				if (read.kind === 'fault') return;
				for (let channel = 0; channel < Math.min(4, read.sound.channelCount); channel += 1)
					for (const value of read.sound.read(channel, 0, 8)) expect(Number.isFinite(value)).toBe(true);
			},
		),
		{numRuns: 500},
	);
	expect(looksLikeWave(new Uint8Array(3))).toBe(false);
});

const python = '/usr/bin/python3';
const hasLibrary = spawnSync(python, ['-c', 'import soundfile']).status === 0;
const skipped = hasLibrary ? '' : ' (skipped: python3-soundfile is not installed here)';

// libsndfile reads and writes both ways.
test.skipIf(!hasLibrary)(
	`libsndfile and readWave agree on every format that recorders write${skipped}`,
	() => {
		const folder = mkdtempSync(join(tmpdir(), 'sound-'));
		try {
			const script = `
import numpy, soundfile, json, sys
rng = numpy.random.default_rng(3)
x = numpy.clip(rng.normal(0, .3, (257, 2)), -1, .99)
for name, kind, container in [('pcm16','PCM_16','WAV'),('pcm24','PCM_24','WAV'),('pcm32','PCM_32','WAV'),('float','FLOAT','WAV'),('double','DOUBLE','WAV'),('u8','PCM_U8','WAV'),('ext','PCM_24','WAVEX'),('rf64','PCM_16','RF64')]:
    path = sys.argv[1] + '/' + name + '.wav'
    soundfile.write(path, x, 96000, subtype=kind, format=container)
    y, rate = soundfile.read(path)
    json.dump([rate, y[:, 0].tolist(), y[:, 1].tolist()], open(path + '.json', 'w'))
`;
			const run = spawnSync(python, ['-c', script, folder], {encoding: 'utf8'});
			expect(run.stderr).toBe('');
			for (const name of ['pcm16', 'pcm24', 'pcm32', 'float', 'double', 'u8', 'ext', 'rf64']) {
				const sound = soundIn(readFileSync(join(folder, `${name}.wav`)));
				const [rate, ...channels] = JSON.parse(readFileSync(join(folder, `${name}.wav.json`), 'utf8'));
				expect(sound.sampleRateHz).toBe(rate);
				for (const [channel, expected] of channels.entries())
					expect([...sound.read(channel, 0, 257)]).toEqual(expected);
			}

			const samples = Float64Array.from({length: 50}, (_, index) => Math.sin(index / 3));
			writeFileSync(
				join(folder, 'own.wav'),
				waveFile({channels: [samples, samples], sampleRateHz: 48_000, mask: 3}),
			);
			const back = spawnSync(
				python,
				[
					'-c',
					'import soundfile,sys,json; i=soundfile.info(sys.argv[1]); y,r=soundfile.read(sys.argv[1]); print(json.dumps([i.format,i.subtype,r,y[:,1].tolist()]))',
					join(folder, 'own.wav'),
				],
				{encoding: 'utf8'},
			);
			const [container, subtype, rate, values] = JSON.parse(back.stdout);
			expect([container, subtype, rate]).toEqual(['WAVEX', 'PCM_24', 48_000]);
			for (const [index, value] of values.entries())
				expect(Math.abs(value - samples[index]!)).toBeLessThanOrEqual(2 ** -24);
		} finally {
			rmSync(folder, {recursive: true});
		}
	},
);
