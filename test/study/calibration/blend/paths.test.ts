import {expect, test} from 'vitest';
import {blendPaths, knownPhase, membersAssumed} from '../../../../source/study/calibration/blend/paths.ts';
import {highPass2, lowPass4, roomProfile} from './room.ts';

const truth = {
	crossoverHertz: 80,
	mainsLimitHertz: 70,
	subLimitHertz: 28,
	arrivalMs: {FC: 8, sub1: 12},
	levelDb: () => 75,
};
const profile = roomProfile(truth);
const groups = {kind: 'mains', still: ['FC'], moved: ['sub1']} as const;
const set = {channels: {FC: {crossoverHertz: 80}}};

// The same filters written out as polynomials, apart from the program's own.
test.each([40, 64, 80, 100, 160])(
	'knownPhase at %i Hz is that of low-pass and sub ahead of high-pass and speaker',
	hertz => {
		const angle = ([real, imaginary]: readonly [number, number]) => Math.atan2(imaginary, real);
		const sub = angle(lowPass4(hertz, 80)) + angle(highPass2(hertz, 28));
		const mains = angle(highPass2(hertz, 80)) + angle(highPass2(hertz, 70));
		const difference = knownPhase(blendPaths(profile, set, groups), hertz) - (sub - mains);
		expect(Math.cos(difference)).toBeCloseTo(1, 9);
	},
);

test('blendPaths take the crossover that stands before the one decided', () => {
	const decided = {
		...profile,
		settings: [{id: 'new', origin: 'solved' as const, channels: {FC: {crossoverHertz: 100}}}],
	};
	expect(blendPaths(decided, set, groups).crossoverHertz).toBe(80);
	expect(blendPaths(decided, undefined, groups).crossoverHertz).toBe(100);
});

test('knownPhase between two subs of one kind is nothing', () => {
	const two = roomProfile({...truth, arrivalMs: {FC: 8, sub1: 12, sub2: 13}});
	const paths = blendPaths(two, set, {kind: 'subs', still: ['sub1'], moved: ['sub2']});
	expect(knownPhase(paths, 50)).toBeCloseTo(0, 12);
});

test('membersAssumed names those whose low limit is not given', () => {
	expect(membersAssumed(profile, groups)).toEqual([]);
	expect(membersAssumed({...profile, channels: [{id: 'FC'}, {id: 'LFE1'}]}, groups)).toEqual(['FC']);
});
