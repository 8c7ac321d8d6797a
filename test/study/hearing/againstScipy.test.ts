import {spawnSync} from 'node:child_process';
import {mkdtempSync, readFileSync, rmSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join, resolve} from 'node:path';
import {afterAll, expect, test} from 'vitest';
import {roomOctaves} from '../../../source/science/signal/octaveBands.ts';
import {synchronisedSweep} from '../../../source/science/signal/sweep.ts';
import {readWave, type Sound} from '../../../source/science/signal/waveRead.ts';
import {octaveDecays} from '../../../source/study/hearing/decay.ts';
import {impulseCutter} from '../../../source/study/hearing/impulses.ts';
import {impulseSpectrum, responseAt} from '../../../source/study/hearing/responses.ts';
import {type RoundSweep, usableBand} from '../../../source/study/hearing/round.ts';

const python = '/usr/bin/python3';
const script = resolve(import.meta.dirname, '../../reference/hearing.py');
const hasScipy = spawnSync(python, ['-c', 'import scipy.signal']).status === 0;
const skipped = hasScipy ? '' : ' (skipped: python3-scipy is not installed here)';

const law = synchronisedSweep(15, 20_000, 2);
const sweep: RoundSweep = {
	channel: 'FL',
	pass: 'main',
	law,
	atSeconds: 0,
	pauseSeconds: 1.3,
	levelDbfs: 0,
};
const lead = 0.5;

type Reference = {
	readonly frequenciesHz: readonly number[];
	readonly real: readonly number[];
	readonly imaginary: readonly number[];
	readonly samples: readonly number[];
	readonly impulse: readonly number[];
	readonly decays: ReadonlyArray<Readonly<Record<'hertz' | 'edt' | 't20' | 't30', number>>>;
	readonly attenuation: ReadonlyArray<readonly number[]>;
};

const folder = mkdtempSync(join(tmpdir(), 'roomtare-scipy-'));
afterAll(() => rmSync(folder, {recursive: true}));

function made(): Reference {
	const [, , closes, closed] = usableBand(sweep);
	const {fromHertz, toHertz, rateSeconds, swellsToHertz, fadesFromHertz} = law;
	const plan = {from: fromHertz, to: toHertz, L: rateSeconds, swellsTo: swellsToHertz};
	const ran = spawnSync(python, [script, folder], {
		encoding: 'utf8',
		input: JSON.stringify({...plan, fadesFrom: fadesFromHertz, closes, closed, lead}),
	});
	if (ran.status !== 0) throw new Error(ran.stderr);
	return JSON.parse(ran.stdout);
}

const reference = hasScipy ? made() : undefined;

function soundOf(name: string): Sound {
	const read = readWave(readFileSync(join(folder, name)));
	if (read.kind !== 'sound') throw new Error(read.fault.code);
	return read.sound;
}

test.skipIf(!hasScipy)(
	`an impulse response is the one that numpy divides out of the same file${skipped}`,
	() => {
		const impulse = impulseCutter(48_000).cut(soundOf('48000.wav'), 0, lead * 48_000, sweep);
		const largest = Math.max(...reference!.impulse.map(Math.abs));
		// Both divide by the same law with the same regularisation; the pieces that are cut differ in length, and what is averaged for
		// its size too: −70 dB of the peak.
		for (const [index, at] of reference!.samples.entries())
			expect(Math.abs(impulse.samples[impulse.zero + at]! - reference!.impulse[index]!)).toBeLessThan(
				3e-4 * largest,
			);
	},
);

// scipy resamples by a windowed sinc whose pass band is flat to 1e-3 (Kaiser, β = 5): 0.01 dB. The regularisation takes
// 1e-4 (0.001 dB) in the middle of the sweep; the cubic between bins of 0.37 Hz 1e-3 of the peak. Below 50 Hz the window cuts off
// what rings ahead of the sweep's own low edge (15 to 20 Hz).
test.skipIf(!hasScipy).each([
	[48_000, 0.01, 0.05],
	[44_100, 0.02, 0.05],
	[96_000, 0.02, 0.05],
])(
	`a recording at %i Hz gives the response of the system that sosfreqz states${skipped}`,
	(rate, mostDb, mostDegrees) => {
		const impulse = impulseCutter(rate).cut(soundOf(`${rate}.wav`), 0, lead * rate, sweep);
		const spectrum = impulseSpectrum(impulse, 5, {beforeMs: 60, afterMs: 950});
		const {frequenciesHz, real, imaginary} = reference!;
		const found = responseAt(spectrum, Float64Array.from(frequenciesHz), 0);
		const largest = Math.max(...real.map((value, index) => Math.hypot(value, imaginary[index]!)));
		for (const [index, hertz] of frequenciesHz.entries()) {
			const [a, b, c, d] = [found.real[index]!, found.imaginary[index]!, real[index]!, imaginary[index]!];
			const size = Math.hypot(c, d);
			// In a dip of the comb what counts is the distance from the truth against the whole.
			if (size < 0.1 * largest) {
				expect(Math.hypot(a - c, b - d) / largest, `${hertz} Hz`).toBeLessThan(0.002);
				continue;
			}

			expect(Math.abs(20 * Math.log10(Math.hypot(a, b) / size)), `level at ${hertz} Hz`).toBeLessThan(
				hertz < 50 ? 0.1 : mostDb,
			);
			const turned = (Math.atan2(b * c - a * d, a * c + b * d) * 180) / Math.PI;
			expect(Math.abs(turned), `phase at ${hertz} Hz`).toBeLessThan(hertz < 50 ? 0.6 : mostDegrees);
		}
	},
);

test.skipIf(!hasScipy)(
	`decay times agree with Butterworth octave filters and numpy's integration${skipped}`,
	() => {
		const sound = soundOf('decay.wav');
		const samples = sound.read(0, 0, sound.length);
		const found = octaveDecays({sweep, rateHz: 48_000, samples, zero: 0}, 0);
		expect(found.map(({hertz}) => hertz)).toEqual(reference!.decays.map(({hertz}) => hertz));
		for (const [index, {hertz, t20, t30}] of reference!.decays.entries()) {
			// One noise, two filters of one standard: what the slopes at the edges let through differs, the more so the fewer independent
			// values an octave holds. Twice the scatter that a decay of bandwidth B and time T has by itself, 0.88/√(BT)
			// (Davy, Dunn & Dubout, Acustica 43 (1979) 12, known as a quotation), at 63 Hz.
			const most = hertz < 200 ? 0.1 : 0.04;
			expect(Math.abs(found[index]!.t20Seconds! / t20 - 1), `T20 at ${hertz} Hz`).toBeLessThan(most);
			expect(Math.abs(found[index]!.t30Seconds! / t30 - 1), `T30 at ${hertz} Hz`).toBeLessThan(most);
		}
	},
);

test.skipIf(!hasScipy)(
	`octave filters of scipy lie within the limits that ours are held to${skipped}`,
	() => {
		expect(reference!.attenuation).toHaveLength(roomOctaves.length - 2);
		const [least, most] = [
			[-0.3, -0.3, -0.3, -0.3, 2, 17.5, 42],
			[0.3, 0.4, 0.6, 1.3, 5, 1000, 1000],
		];
		for (const filter of reference!.attenuation)
			for (const [index, decibels] of filter.entries()) {
				expect(decibels).toBeGreaterThanOrEqual(least![index]!);
				expect(decibels).toBeLessThanOrEqual(most![index]!);
			}
	},
);
