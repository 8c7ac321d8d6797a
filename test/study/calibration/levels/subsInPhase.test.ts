import {expect, test} from 'vitest';
import type {Profile, SettingsSet} from '../../../../source/profile/types.ts';
import {solve} from '../../../../source/study/calibration/solve.ts';
import {emptyRoom, level, tape} from '../room.ts';

/** Cosine of the lag averaged over pink noise from 30 to 80 Hz, by the definition, in steps of a thousandth. */
function meanCosineOf(lagMs: number): number {
	const values = Array.from({length: 1000}, (_, index) => {
		const hertz = 30 * (80 / 30) ** ((index + 0.5) / 1000);
		return Math.cos(2 * Math.PI * hertz * (lagMs / 1000));
	});
	return values.reduce((sum, value) => sum + value, 0) / values.length;
}

const zero: SettingsSet = {
	id: 'zero',
	origin: 'found',
	channels: {LFE1: {delayMs: {stepped: 0}}},
	outputs: {one: {delayMs: {stepped: 0}}, two: {delayMs: {stepped: 0}}},
};

/** Two subs of 75 dB each whose paths differ so that one arrives `lagMs` later; read singly and together. */
function readApart(lagMs: number, changes: Partial<Profile> = {}): Profile {
	const speed = 343.2; // ISO 9613-1 at 20 °C
	const together = 75 + 10 * Math.log10(2 + 2 * meanCosineOf(lagMs));
	return emptyRoom({
		channels: [{id: 'FL'}, {id: 'LFE1'}],
		subs: [
			{id: 'sub1', name: 'Front sub', fedBy: 'LFE1', processorOutput: 'one'},
			{id: 'sub2', name: 'Back sub', fedBy: 'LFE1', processorOutput: 'two'},
		],
		bassProcessor: {
			latencyMs: 0,
			outputs: ['one', 'two'],
			delay: {stepMs: 0.1, minimumMs: 0, maximumMs: 30},
			gain: {stepDb: 0.5, minimumDb: -20, maximumDb: 6},
		},
		settings: [zero],
		tape: [tape('FL', 3), tape('sub1', 2), tape('sub2', 2 + (speed * lagMs) / 1000)],
		meter: [level('FL', 75), level('sub1', 75), level('sub2', 75), level(['sub1', 'sub2'], together)].map(
			reading => ({...reading, inForce: 'zero'}),
		),
		...changes,
	});
}

/** What receiver and processor together do to each sub, as computed. */
function exactGains(profile: Profile): number[] {
	const {channels, outputs} = solve(profile);
	const trim = channels.find(({id}) => id === 'LFE1')!.trimDb!.stepped;
	return outputs.map(({gainDb}) => trim + gainDb!.exact);
}

test.each([0, 1, 2, 3])('subs read together %d ms apart are set to what they make once aligned', lagMs => {
	// In phase two subs of 75 dB make 81.02, whatever they made before: each has to come down by 6.02 dB. The tape's
	// reading is exact here and the mean cosine smooth, so the hundredth is kept.
	for (const gain of exactGains(readApart(lagMs))) expect(gain).toBeCloseTo(-6.02, 2);
});

test('a lag that cannot be set apart is left in what they make', () => {
	const profile = readApart(2);
	const oneOutput = profile.subs!.map(sub => ({...sub, processorOutput: 'one'}));
	// Both keep their lag behind one output, so together they go on making what was read.
	const expected = -10 * Math.log10(2 + 2 * meanCosineOf(2));
	const [gain] = exactGains({...profile, subs: oneOutput});
	expect(gain).toBeCloseTo(expected, 2);
});

test('without distances what was read counts as it is', () => {
	const expected = -10 * Math.log10(2 + 2 * meanCosineOf(2));
	for (const gain of exactGains(readApart(2, {tape: []}))) expect(gain).toBeCloseTo(expected, 2);
});

test('without the settings in force what was read counts as it is', () => {
	const profile = readApart(2);
	const expected = -10 * Math.log10(2 + 2 * meanCosineOf(2));
	const meter = profile.meter!.map(({inForce: _, ...reading}) => reading);
	for (const gain of exactGains({...profile, meter})) expect(gain).toBeCloseTo(expected, 2);
});
