import {beforeAll, expect, test} from 'vitest';
import {codesOf, hearSamples, onlyPlaying, phone, type Recorded, recorded} from './simulated/hear.ts';
import {randomFrom} from './simulated/room.ts';

// Each fault is played through a simulated room, or done to a recording of one as a recorder does it; what hearing says of it
// is the test. The recorder samples at 32 kHz, which holds all that arrivals need, to keep the runs short.
const recorder = {...phone, rateHz: 32_000};
let clean: Recorded;
beforeAll(() => {
	clean = recorded({}, recorder);
}, 120_000);

/** Sample of a second of the file. */
const at = (seconds: number) => Math.round((recorder.before! + seconds) * 32_000 * (1 + recorder.ppm / 1e6));
const sweep = (channel: string, pass: string) =>
	clean.round.sweeps.find(each => each.channel === channel && each.pass === pass)!;
const heardCodes = (samples: Float64Array) => codesOf(onlyPlaying(hearSamples(samples, 32_000)));

test('a sound recording has no findings', () => {
	expect(heardCodes(clean.samples)).toEqual([]);
});

test('noise alone is no round, and says so', () => {
	const random = randomFrom(5);
	const heard = hearSamples(
		Float64Array.from({length: 400_000}, () => 0.2 * (random() - 0.5)),
		32_000,
	);
	expect(heard.playings).toEqual([]);
	expect(heard.findings.map(({code}) => code)).toEqual(['heard-no-round']);
});

test('a recorder that is overloaded is named', () => {
	const samples = clean.samples.map(value => Math.max(-1, Math.min(1, 4 * value)));
	expect(heardCodes(samples)).toContain('heard-clipped');
});

test('a recording that ends too early says which channels are missing', () => {
	const {atSeconds} = sweep('FR', 'main');
	const [finding] = onlyPlaying(
		hearSamples(clean.samples.slice(0, at(atSeconds + 3)), 32_000),
	).findings.filter(({code}) => code === 'heard-cut');
	expect(finding).toMatchObject({kind: 'problem', facts: {missingChannels: ['FR']}});
});

test('samples that a recorder dropped between two sweeps are found with their number', () => {
	// 64 samples of 32 kHz are 2 ms.
	const cut = at(sweep('FR', 'main').atSeconds + 7);
	const samples = new Float64Array(clean.samples.length - 64);
	samples.set(clean.samples.subarray(0, cut));
	samples.set(clean.samples.subarray(cut + 64), cut);
	const dropped = onlyPlaying(hearSamples(samples, 32_000)).findings.find(
		({code}) => code === 'heard-samples-dropped',
	);
	expect(dropped?.facts).toMatchObject({ms: expect.closeTo(-2, 1)});
});

test('a slam within one sweep asks for that channel alone', () => {
	const samples = clean.samples.slice();
	const random = randomFrom(9);
	const from = at(sweep('FR', 'main').atSeconds + 3.1);
	for (let index = 0; index < 6000; index += 1)
		samples[from + index] = samples[from + index]! + 0.45 * Math.exp(-index / 1500) * (2 * random() - 1);
	expect(heardCodes(samples)).toEqual(['heard-disturbed FR']);
});

/** A gain that depends on what is played, with or without the noise of the room. */
function withGain(gainOf: (pass: string) => number): Float64Array {
	const samples = clean.samples.slice();
	for (const {atSeconds, law, pauseSeconds, pass} of clean.round.sweeps)
		for (let index = at(atSeconds); index < at(atSeconds + law.seconds + pauseSeconds); index += 1)
			samples[index] = samples[index]! * gainOf(pass);
	return samples;
}

test('a recorder with gain control raises soft sweeps and the noise with them', () => {
	const codes = heardCodes(withGain(pass => (pass === 'soft' ? 2.5 : pass === 'softer' ? 1.8 : 1)));
	expect(codes).toContain('heard-gain-control');
	expect(codes).not.toContain('heard-loudness-levelled');
});

test('a player that levels loudness raises soft sweeps and leaves the noise', () => {
	const raised = withGain(pass => (pass === 'soft' ? 2.5 : pass === 'softer' ? 1.8 : 1));
	// Pauses stay as they were: what sounds there is the room.
	for (const {atSeconds, law, pauseSeconds} of clean.round.sweeps) {
		const [from, to] = [at(atSeconds + law.seconds + 0.5), at(atSeconds + law.seconds + pauseSeconds)];
		raised.set(clean.samples.subarray(from, to), from);
	}

	expect(heardCodes(raised)).toContain('heard-loudness-levelled');
});

test('a floor that is shut off in the pauses is named', () => {
	const samples = clean.samples.slice();
	for (const {atSeconds, law, pauseSeconds} of clean.round.sweeps)
		samples.fill(0, at(atSeconds + law.seconds + 0.4), at(atSeconds + law.seconds + pauseSeconds));
	expect(heardCodes(samples)).toContain('heard-floor-gated');
});

test('a voice mode without anything above 8 kHz is named', () => {
	// Three one-pole low-passes and a mean of eight: 50 dB down at 9 kHz against 2 kHz.
	let samples = clean.samples;
	for (let pass = 0; pass < 6; pass += 1) {
		const next = new Float64Array(samples.length);
		for (let index = 4; index < samples.length - 4; index += 1)
			next[index] = (samples[index - 1]! + 2 * samples[index]! + samples[index + 1]!) / 4;
		samples = next;
	}

	expect(heardCodes(samples)).toContain('heard-voice-mode');
});

test('an opening that was swallowed is told, and costs nothing', () => {
	const samples = clean.samples.slice();
	const random = randomFrom(3);
	for (let index = 0; index < at(8); index += 1) samples[index] = 4e-4 * (random() - 0.5);
	const heard = onlyPlaying(hearSamples(samples, 32_000));
	expect(codesOf(heard)).toEqual(['heard-start-swallowed']);
	expect(heard.lines.every(({onset}) => onset)).toBe(true);
});

test('noise names the octaves that it covers', () => {
	const random = randomFrom(11);
	const samples = clean.samples.map(value => 0.05 * value + 0.005 * (2 * random() - 1));
	const finding = onlyPlaying(hearSamples(samples, 32_000)).findings.find(
		({code}) => code === 'heard-noisy-octaves',
	);
	expect(finding).toBeDefined();
});
