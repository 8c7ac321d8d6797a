import {beforeAll, expect, test} from 'vitest';
import type {Profile} from '../../../source/profile/types.ts';
import {sentenceOf} from '../../../source/report/said/said.ts';
import {sayIn} from '../../../source/report/said/say.ts';
import {lowCutFindings} from '../../../source/study/hearing/checks/lowCut.ts';
import type {HearingFinding} from '../../../source/study/hearing/facts.ts';
import {shiftBetween} from '../../../source/study/hearing/spots.ts';
import {eveningProfile} from './simulated/evening.ts';
import {codesOf, hearSamples, onlyPlaying, phone} from './simulated/hear.ts';
import {playRound, recordSound} from './simulated/play.ts';
import {simulated} from './simulated/setup.ts';

// What happens on the way is played: the sound of one round, changed as each fault changes it, then recorded.
const {round, responses} = simulated();
let sound: Float64Array;
let asleep: Float64Array;
beforeAll(() => {
	sound = playRound(round, responses);
	asleep = playRound(round, simulated({subs: []}).responses);
}, 240_000);

const hearSound = (changed: Float64Array) =>
	onlyPlaying(hearSamples(recordSound(changed, phone), phone.rateHz));
const sentences = (findings: readonly HearingFinding[]) =>
	findings.map(each => sentenceOf(each, sayIn(eveningProfile() as Profile, 'm')));

/** The sound with one channel's impulse response changed for a part of the file. */
function changedFor(
	channel: string,
	change: (impulse: Float64Array) => Float64Array,
	isChanged: (seconds: number) => boolean,
): Float64Array {
	const other = playRound(round, new Map([[channel, change(responses.get(channel)!)]]));
	const own = playRound(round, new Map([[channel, responses.get(channel)!]]));
	return sound.map((value, index) =>
		isChanged(index / 48_000) ? value - own[index]! + other[index]! : value,
	);
}

const sweepOf = (channel: string, pass: string) =>
	round.sweeps.find(sweep => sweep.channel === channel && sweep.pass === pass)!;

test('a link that wanders by 0.4 ms between two sweeps is named with its line', () => {
	const again = sweepOf('FL', 'again');
	// 19 samples of 48 kHz are 0.4 ms.
	const later = (impulse: Float64Array) => {
		const moved = new Float64Array(impulse.length);
		moved.set(impulse.subarray(0, -19), 19);
		return moved;
	};
	const heard = hearSound(changedFor('FL', later, seconds => seconds >= again.atSeconds - 0.2));
	const found = heard.findings.find(({code}) => code === 'heard-wanders' || code === 'heard-samples-dropped');
	expect(found).toBeDefined();
	expect(sentences([found!])[0]).toMatch(/0\.[34]\d? ms/);
});

test('a sub that slept through the first sweep is named, and nothing is taken of that playing', {
	timeout: 240_000,
}, () => {
	const soft = sweepOf('FL', 'soft');
	const main = sweepOf('FL', 'main');
	const awake = main.atSeconds - 0.2;
	expect(soft.atSeconds).toBeLessThan(awake);
	const heard = hearSound(sound.map((value, index) => (index / 48_000 < awake ? asleep[index]! : value)));
	expect(codesOf(heard)).toContain('heard-sub-slept FL');
	expect(sentences(heard.findings).join(' ')).toContain('standby');
});

test('a clock 400 ppm off is called no clock', () => {
	const heard = onlyPlaying(hearSamples(recordSound(sound, {...phone, ppm: 400}), phone.rateHz));
	expect(heard.clockPpm).toBeCloseTo(400, 0);
	expect(sentences(heard.findings).join(' ')).toContain('ppm off, more than any clock is');
});

test('a master volume that was touched between playings is told with its decibels', () => {
	const first = hearSound(sound);
	const softer = hearSamples(recordSound(sound, {...phone, peak: 0.5 * 10 ** (-3 / 20)}), phone.rateHz);
	expect(shiftBetween(first, onlyPlaying(softer))!.db).toBeCloseTo(-3, 1);
});

test('a second sound 4 ms after the first and 8 dB stronger, as of a dipole, is given beside it', () => {
	const dipole = (impulse: Float64Array) => {
		const twice = impulse.map(value => 0.4 * value);
		for (let index = 192; index < impulse.length; index += 1) twice[index]! += impulse[index - 192]!;
		return twice;
	};
	const heard = hearSound(changedFor('FR', dipole, () => true));
	const line = heard.lines.find(({channel}) => channel === 'FR')!;
	expect(line.onset!.later!.ms - line.onset!.ms).toBeCloseTo(4, 1);
	// The first one is 20·lg(1/0.4) = 8.0 dB softer; the filters of the band look at both alike.
	expect(line.onset!.later!.strongerDb).toBeGreaterThan(6);
	expect(codesOf(heard)).toContain('heard-later-stronger FR');
});

test('a phone that cuts the bass is told, with what suffers and what does not', () => {
	// Second order at 100 Hz, as an analogue high-pass by the bilinear transform (Oppenheim & Schafer, 7.2).
	const k = Math.tan((Math.PI * 100) / 48_000);
	const norm = 1 / (1 + Math.SQRT2 * k + k * k);
	const [b0, b1, a1, a2] = [norm, -2 * norm, 2 * (k * k - 1) * norm, (1 - Math.SQRT2 * k + k * k) * norm];
	let [x1, x2, y1, y2] = [0, 0, 0, 0];
	const cut = sound.map(x => {
		const y = b0 * x + b1 * x1 + b0 * x2 - a1 * y1 - a2 * y2;
		[x2, x1, y2, y1] = [x1, x, y1, y];
		return y;
	});
	const [plain, thin] = [hearSound(sound), hearSound(cut)];
	// What the filter takes at 56 Hz, the middle of 28 to 112 Hz: 10·lg(1 + (100/56)^4) = 10.5 dB.
	const bass = (heard: typeof plain) => heard.lines[0]!.bassLevelDb;
	expect(bass(plain) - bass(thin)).toBeGreaterThan(6);
	const [found] = lowCutFindings(thin.lines);
	expect(sentences([found!])[0]).toMatch(/sub levels from it are worthless.*blend does not suffer/s);
	expect(lowCutFindings(plain.lines)).toEqual([]);
});
