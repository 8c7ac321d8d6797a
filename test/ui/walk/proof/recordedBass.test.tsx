import {expect, test} from 'vitest';
import {inputsHash, isStale} from '../../../../source/profile/ask/digest.ts';
import type {MeterReading, Profile, RecordedResponse} from '../../../../source/profile/types.ts';
import {prove} from '../../../../source/study/calibration/proof/prove.ts';
import {combined} from '../../../../source/study/hearing/apart/complexLine.ts';
import {keptPoints} from '../../../../source/study/hearing/keepRound.ts';
import {predictedBass} from '../../../../source/study/hearing/predictedBass.ts';
import {type HeardResponse, responseFrequencies} from '../../../../source/study/hearing/responses.ts';
import {proofLines} from '../../../../source/ui/walk/proof/lines.ts';
import {eveningProfile} from '../../../study/hearing/simulated/evening.ts';

const evening = eveningProfile();
const seat = evening.seats[0]!.id;
const frequencies = responseFrequencies();
const fronts = ['FL', 'FR', 'FC'];

/** A flat path so late and so loud. */
function path(ms: number, db: number, sign = 1): HeardResponse {
	const size = sign * 10 ** (db / 20);
	return {
		real: frequencies.map(hertz => size * Math.cos((2 * Math.PI * hertz * ms) / 1000)),
		imaginary: frequencies.map(hertz => -size * Math.sin((2 * Math.PI * hertz * ms) / 1000)),
	};
}

const now = {...evening.settings![0]!, id: 'found', origin: 'found' as const};
const later = (ms: number, isTurned = false) => ({
	...now,
	id: 'set1',
	origin: 'entered' as const,
	channels: {
		...now.channels,
		LFE1: {...now.channels.LFE1!, delayMs: {stepped: ms}, polarityInverted: isTurned},
		FL: {...now.channels.FL!, trimDb: {stepped: 1}},
	},
});

const read = (source: string, decibels: number, signal: MeterReading['signal']): MeterReading => ({
	source,
	seat,
	decibels,
	weighting: 'C',
	round: 'first',
	inForce: 'found',
	signal,
});
const middle = {kind: 'pink', fromHertz: 355, toHertz: 2818} as const;
const bass = {kind: 'pink', fromHertz: 28.2, toHertz: 112.2} as const;

/** Recorded apart in the set found; then the set decided is typed in, the sub as said, and all is recorded once more. */
function recorded(sub: HeardResponse, gainDb = 0): Profile {
	const points = (response: HeardResponse) => keptPoints(response, 300);
	const common = {seat, sha256: ''};
	const before = fronts.flatMap((source): RecordedResponse[] => [
		{
			...common,
			source,
			part: 'all',
			recording: 'r1',
			levelDb: -30,
			points: points(combined(path(0, -30), 1, path(2, -28), 1)),
		},
		{...common, source, part: 'main', recording: 'r1', points: points(path(0, -30))},
	]);
	const trims: Record<string, number> = {FL: 1};
	const after = fronts.map((source): RecordedResponse => {
		const main = path(0, -30 + (trims[source] ?? 0));
		const all = combined(main, 1, sub, 1);
		return {
			...common,
			source,
			part: 'all',
			recording: 'r2',
			// The recorder's gain is another one today.
			levelDb: -30 + (trims[source] ?? 0) + gainDb,
			points: points(combined(all, 10 ** (gainDb / 20), all, 0)),
		};
	});
	const made = {sha256: '', atSeconds: 0, seat, clockPpm: 0};
	return {
		...evening,
		settings: [now, later(3)],
		meter: [...fronts.map(source => read(source, 75, middle)), read('sub1', 74, bass)],
		recordings: [
			{...made, id: 'r1', file: 'a', round: 'first', inForce: 'found', apartBy: 'change'},
			{...made, id: 'r2', file: 'b', round: 'proof', inForce: 'set1'},
		],
		responses: [
			...before,
			{
				...common,
				source: 'sub1',
				part: 'subs',
				recording: 'r1',
				crossoverHertz: 80,
				points: points(path(2, -28)),
			},
			...after,
		],
	};
}

const closed = (profile: Profile) => (prove(profile).recorded ?? []).map(({source}) => source.join('+'));

test('bass that comes out as the parts recorded before predict it closes the row of the sub, whatever the recorder’s gain', () => {
	const profile = recorded(path(5, -28), -4);
	const [first] = predictedBass(profile, profile.recordings![1]!);
	expect(Math.abs(first!.bandOffDb)).toBeLessThan(0.05);
	expect(first!.worstDb).toBeLessThan(0.05);
	// Nothing is kept below 10 Hz: what is not known is no number, and closes nothing.
	expect(first!.offDbAt(5)).toBeNaN();
	expect(closed(profile).sort()).toEqual(['FC', 'FL', 'FR', 'sub1']);
	expect(prove(profile).verdict).toBe('met');
	expect(
		proofLines(profile, 80)
			.map(({text}) => text)
			.join(' ')
			.replace(/\s+/g, ' '),
	).toContain(
		'levels of the speakers against each other, and the bass, as the parts recorded before predict it',
	);
});

test('a delay that was not typed in, and a sub that was turned, leave the row of the sub open', () => {
	expect(closed(recorded(path(2, -28)))).not.toContain('sub1');
	expect(closed(recorded(path(5, -28, -1)))).not.toContain('sub1');
	// The speakers' rows do not hang on it.
	expect(closed(recorded(path(5, -28, -1)))).toContain('FL');
});

test('a sub that plays 3 dB too loud leaves its row open', () => {
	expect(closed(recorded(path(5, -25)))).not.toContain('sub1');
});

test('with nothing told apart before, or the same settings, bass is not judged', () => {
	const profile = recorded(path(5, -28));
	const without = {...profile, responses: profile.responses!.filter(({part}) => part === 'all')};
	expect(predictedBass(without, without.recordings![1]!)).toEqual([]);
	expect(predictedBass(profile, {...profile.recordings![1]!, inForce: 'found'})).toEqual([]);
});

test('subs that were told together predict nothing once they were set otherwise to each other', () => {
	const one = recorded(path(5, -28));
	const subs = ['A', 'B'].map((processorOutput, index) => ({
		...one.subs![0]!,
		id: `sub${index + 1}`,
		processorOutput,
	}));
	const bassProcessor = {
		latencyMs: 0,
		outputs: ['A', 'B'],
		delay: {stepMs: 0.1, minimumMs: 0, maximumMs: 30},
		gain: {stepDb: 0.5, minimumDb: -20, maximumDb: 6},
	};
	const responses = one.responses!.map(each =>
		each.part === 'subs' ? {...each, source: ['sub1', 'sub2']} : each,
	);
	const withOutputs = (a: number, b: number): Profile => ({
		...one,
		subs,
		bassProcessor,
		responses,
		settings: [now, {...later(3), outputs: {A: {delayMs: {stepped: a}}, B: {delayMs: {stepped: b}}}}],
	});
	const predicted = (profile: Profile) => predictedBass(profile, profile.recordings![1]!);
	expect(predicted(withOutputs(0, 0))).toHaveLength(3);
	expect(predicted(withOutputs(0, 4))).toEqual([]);
});

test('a recording made with the settings does not outdate them; one that asks for others does', () => {
	const tried = recorded(path(5, -28));
	const [found, verified] = tried.recordings!;
	const before = {...tried, recordings: [found!]};
	const inputsNow = {...later(3), inputsHash: inputsHash({...before, settings: [now]})};
	const arrived = {...tried.responses!.at(-1)!, arrivalMs: 0.2, arrivalSigmaMs: 0.03};
	const profile: Profile = {
		...tried,
		settings: [now, inputsNow],
		responses: [...tried.responses!.slice(0, -1), arrived],
	};
	expect(inputsHash(profile)).not.toBe(inputsHash({...profile, recordings: [found!]}));
	expect(isStale(profile)).toBe(false);
	const blend = {groups: [{subs: ['sub1'], addedMs: 1, isTurned: false}], gainDb: 1};
	expect(isStale({...profile, recordings: [found!, {...verified!, blend}]})).toBe(true);
	// A reading since then outdates them as ever.
	expect(isStale({...profile, meter: [...profile.meter!, read('FL', 76, middle)]})).toBe(true);
});
