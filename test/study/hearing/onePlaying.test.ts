import {beforeAll, expect, test} from 'vitest';
import type {RecordedResponse} from '../../../source/profile/types.ts';
import {separateByLfe} from '../../../source/study/hearing/apart/fromLfe.ts';
import {statedLowPasses} from '../../../source/study/hearing/apart/statedLowPasses.ts';
import type {HeardPlaying} from '../../../source/study/hearing/heardPlaying.ts';
import {profileBlend} from '../../../source/study/hearing/profileBlend.ts';
import {withRound} from '../../../source/study/hearing/takeRound.ts';
import {understand} from '../../../source/study/hearing/understand.ts';
import {eveningProfile} from './simulated/evening.ts';
import {hearSamples, onlyPlaying, phone, recorded} from './simulated/hear.ts';
import type {Setup} from './simulated/setup.ts';
import {errorDb, truth} from './simulated/truth.ts';

// One playing of the file that has the LFE channel: sub 4 ms late, nothing touched; the low-passes as stated, and one that is not.
const base: Setup = {size: 'bass', channels: ['FL', 'FR', 'LFE1'], delayMs: {sub1: 4}};
const gain = 1;
let seed = 40;
function hear(setup: Setup): HeardPlaying {
	seed += 1;
	return onlyPlaying(hearSamples(recorded(setup, {...phone, rateHz: 32_000, gain, seed}).samples, 32_000));
}

let stands: HeardPlaying;
let other: HeardPlaying;
beforeAll(() => {
	stands = hear(base);
	other = hear({...base, lfeLowPassHertz: 200});
}, 240_000);

const profile = eveningProfile();
const lowPasses = statedLowPasses(profile, profile.settings![0]);

/** One playing as `hear` understands it. */
const understood = (playing: HeardPlaying) =>
	understand(profile, [{playing, file: 'a.wav', sha256: 'a'}], new Map(), {
		round: 'first',
		takenAt: '2026-04-18T20:00:00Z',
	});

// The sub is told by one low-pass divided by the other, both exact here: what is left is the recorder's noise and the division's.
test('the LFE sweep and two stated low-passes tell speakers and subs apart within −35 dB, 40 to 160 Hz', () => {
	const {mains, groups, agreement} = separateByLfe(stands, lowPasses, 'sub1')!;
	expect(agreement.isGood).toBe(true);
	for (const channel of ['FL', 'FR'])
		expect(errorDb(mains.get(channel)!, truth({...base, subs: []}, channel, 40, 160, gain))).toBeLessThan(
			-35,
		);
	const silent = {FL: -300, FR: -300};
	expect(
		errorDb(groups.get('sub1')![0]!.mean, truth({...base, gainDb: silent}, 'FL', 40, 160, gain)),
	).toBeLessThan(-35);
});

test('a low-pass that is not the stated one shows below half the crossover, and no blend is built on it', () => {
	const {agreement} = separateByLfe(other, lowPasses, 'sub1')!;
	expect(agreement.isGood).toBe(false);
	// Its group delay is 2√2/ω: 3.75 ms at 120 Hz, 2.25 at 200; with less of it the speakers' bass comes 1.5 ms after it.
	expect(agreement.ms).toBeGreaterThan(1);
	expect(agreement.ms).toBeLessThan(2);
	const {findings, kept} = understood(other);
	expect(findings.map(({code}) => code)).toContain('heard-lfe-disagrees');
	expect(kept.responses.every(({part}) => part === 'all')).toBe(true);
});

test('one playing asks for all subs together, and says how it was told', () => {
	const {findings, kept, rounds} = understood(stands);
	expect(findings.map(({code}) => code)).toContain('heard-apart-by-lfe');
	expect(rounds[0]!.apartBy).toBe('lfe');
	expect(kept.recordings[0]!.apartBy).toBe('lfe');
	const taken = withRound(profile, {
		recordings: kept.recordings,
		responses: kept.responses.map(each => ({...each, sha256: ''}) as RecordedResponse),
	});
	const blend = profileBlend(taken)!;
	expect(blend.by).toBe('lfe');
	expect(blend.groups.map(({subs}) => subs)).toEqual([['sub1']]);
	expect(blend.gainDb).toBeGreaterThan(0.3);
});
