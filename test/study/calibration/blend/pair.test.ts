import {expect, test} from 'vitest';
import type {MeterReading, Profile} from '../../../../source/profile/types.ts';
import {solve} from '../../../afresh.ts';
import {
	apart,
	boxesOf,
	dialledIn,
	pairIn,
	profileWith,
	read,
	resultOf,
	subs,
	taped,
	walkedPair,
} from './pairRoom.ts';

test('a change between subs asks for twelve tones of both, at three delays of one, and nothing is unplugged', () => {
	const {status, blocks, cost} = pairIn(dialledIn(profileWith(), 'distances'));
	const steps = blocks.flatMap(block => block.steps);
	expect(status).toBe('reading');
	expect(steps).toHaveLength(12);
	expect(cost.readings).toBe(24);
	for (const {source, playInto, signal} of steps) {
		expect(source).toEqual(subs);
		expect(playInto).toEqual(['LFE1']);
		expect(signal.kind).toBe('tone');
	}

	expect(blocks.map(({added}) => added.delayMs)).toEqual([0, 5.6, 11.2]);
	expect(blocks.map(({actions}) => actions.map(({about, what}) => `${about} ${what}`))).toEqual([
		[],
		['B delay'],
		['B delay'],
	]);
});

test('a sub that is late and turned is found, tried, kept, and then both add up', () => {
	const start = dialledIn(profileWith(), 'distances');
	const done = walkedPair(start, apart);
	const pair = pairIn(done);
	expect(pair.status).toBe('kept');
	expect(pair.trial!.gainsDb.lfe).toBeGreaterThan(1);
	const after = dialledIn(done, 'pair');
	const {delayMs, inverted} = boxesOf(after.settings!.at(-1)!);
	const lateMs = apart.arrivalMs.sub2! + delayMs.sub2! - apart.arrivalMs.sub1! - delayMs.sub1!;
	// Within a tenth of the shortest period read: 0.4 dB of two equal sounds there.
	expect(Math.abs(lateMs)).toBeLessThan(1.6);
	// One of the two is turned: which of them, the fronts say.
	expect(inverted).toHaveLength(1);
});

test('what was kept is typed in once and not wanted again, and it says why', () => {
	const done = dialledIn(walkedPair(dialledIn(profileWith(), 'distances'), apart), 'pair');
	const again = dialledIn(done, 'again');
	expect(boxesOf(again.settings!.at(-1)!)).toEqual(boxesOf(done.settings!.at(-1)!));
	expect(pairIn(done).wanted).toMatchObject({isDecided: true});
	expect(solve(done).remarks).toContainEqual(
		expect.objectContaining({code: 'pair-changed', facts: expect.objectContaining({isTurned: true})}),
	);
});

test('tones read through the crossover before no longer count after it, and are asked for anew once it stands', () => {
	const start = dialledIn(profileWith(), 'distances');
	const tone = resultOf(start).blocks[0]!.steps[0]!;
	const before = read(start, apart, tone);
	expect(resultOf(before).otherRelation).toEqual([]);
	expect(pairIn(before).outdates).toBe(1);
	const kept = walkedPair(before, apart);
	const waiting = resultOf(kept);
	// The boxes still stand as distances have it: nothing is worth reading before they hold what was kept.
	expect(waiting).toMatchObject({standsApart: true, blocks: []});
	const result = resultOf(dialledIn(kept, 'pair'));
	expect(result.standsApart).toBe(false);
	expect(result.otherRelation).toContain(0);
	const steps = result.blocks.flatMap(block => block.steps);
	expect(steps).toHaveLength(27);
	expect(steps.some(({isTaken}) => isTaken)).toBe(false);
});

test('subs that add up already give nothing to try', () => {
	expect(pairIn(walkedPair(dialledIn(profileWith(), 'distances'), taped)).status).toBe('stands');
});

test('what makes a front softer is put back: delay and polarity are what distances give, and it is not tried again', () => {
	const start = dialledIn(profileWith(), 'distances');
	const profile = walkedPair(start, apart, (subject, {part, playInto}) => {
		// Somebody's centre loses by it.
		const isLosing = part === 'pair after' && playInto[0] === 'FC';
		const meter = subject.meter!;
		return isLosing ? {...subject, meter: meter.with(-1, {...meter.at(-1)!, decibels: 40})} : subject;
	});
	const {status, blocks, trial} = pairIn(profile);
	expect(status).toBe('put back');
	expect(trial!.gainsDb.centre).toBeLessThan(0);
	expect(blocks.flatMap(({steps}) => steps).every(({isTaken}) => isTaken)).toBe(true);
	const boxes = (of: Profile) => boxesOf(dialledIn(of, 'then').settings!.at(-1)!);
	expect(boxes(profile)).toEqual(boxes(start));
	expect(solve(profile).remarks.map(({code}) => code)).not.toContain('pair-changed');
});

test('a reading that no two sounds make is named', () => {
	const start = dialledIn(profileWith(), 'distances');
	const steps = pairIn(start).blocks.flatMap(block => block.steps);
	let profile = start;
	for (const step of steps) profile = read(profile, taped, step);
	const wrong = profile.meter!.findIndex(
		({signal, addedDelayMs}) => signal?.kind === 'tone' && signal.hertz === 40 && addedDelayMs === 5.6,
	);
	const meter = profile.meter!.map((reading, index) =>
		index === wrong ? {...reading, decibels: reading.decibels - 20} : reading,
	);
	const tone = pairIn({...profile, meter}).tones.find(({hertz}) => hertz === 40);
	expect(tone?.impossibleIndex).toBeDefined();
});

test('one sub, two on one output, and two on no box of their own are not set apart', () => {
	const one = profileWith();
	expect(resultOf({...one, subs: one.subs!.slice(0, 1)}).pair).toBeUndefined();
	const joined = {...one, subs: one.subs!.map(sub => ({...sub, processorOutput: 'A'}))};
	expect(resultOf(joined).pair).toBeUndefined();
	const direct = {...one, bassProcessor: undefined, subs: one.subs!.map(({processorOutput, ...sub}) => sub)};
	expect(resultOf(direct).pair).toBeUndefined();
});

test('a reading of both together counts for the delays it was taken with: after the change it is asked for anew', () => {
	const noise = (source: MeterReading['source'], decibels: number, inForce: string): MeterReading => ({
		source,
		seat: 'sofa',
		decibels,
		weighting: 'Z',
		signal: {kind: 'pink', fromHertz: 28.2, toHertz: 112.2},
		round: 'first',
		inForce,
	});
	const withReadings = (profile: Profile, ...readings: MeterReading[]): Profile => ({
		...profile,
		meter: [...(profile.meter ?? []), ...readings],
	});
	const codes = (profile: Profile) => solve(profile).remarks.map(({code}) => code);
	const start = dialledIn(profileWith(), 'distances');
	const levels = withReadings(start, noise('sub1', 75, 'distances'), noise('sub2', 75, 'distances'));
	const together = withReadings(levels, noise(subs, 73, 'distances'));
	expect(codes(together)).not.toContain('coherent-sum-assumed');
	const kept = dialledIn(walkedPair(together, apart), 'pair');
	expect(codes(kept)).toContain('coherent-sum-assumed');
	expect(codes(withReadings(kept, noise(subs, 79, 'pair')))).not.toContain('coherent-sum-assumed');
});

test('where the second sub has no room for two delays the first moves, and the second goes back first', () => {
	const short = profileWith({
		bassProcessor: {
			latencyMs: 0,
			outputs: ['A', 'B'],
			delay: {stepMs: 0.1, minimumMs: 0, maximumMs: 9},
			gain: {stepDb: 0.5, minimumDb: -20, maximumDb: 6},
			invertsOutputs: true,
		},
	});
	const {blocks} = pairIn(dialledIn(short, 'distances'));
	expect(blocks.map(({steps}) => steps.length)).toEqual([4, 4, 4]);
	const [standing, later, other] = blocks.map(({actions}) => actions);
	expect(standing).toEqual([]);
	expect(later).toMatchObject([{about: 'B', change: expect.closeTo(5.6, 9)}]);
	expect(other).toMatchObject([
		{about: 'B', from: later![0]!.to, to: later![0]!.from},
		{about: 'A', change: expect.closeTo(5.6, 9)},
	]);
});
