import {expect, test} from 'vitest';
import {parseProfile} from '../../../../source/profile/file/parse.ts';
import type {MeterReading, Profile} from '../../../../source/profile/types.ts';
import {withDecided, withTick} from '../../../../source/ui/walk/dialIn/decide.ts';
import {situationOf} from '../../../../source/ui/walk/dialIn/situation.ts';
import {exampleProfile, foundSet} from './exampleProfile.ts';

const at = '2026-04-18T10:00:00Z';
const quieterCentre: MeterReading = {
	source: 'FC',
	seat: 'seat1',
	decibels: 69,
	weighting: 'C',
	round: 'first',
	inForce: 'found',
};
const withReading = (profile: Profile): Profile => ({...profile, meter: [...profile.meter!, quieterCentre]});

test('withDecided adds a solved set with its time and the digest of its inputs', () => {
	const {settings} = withDecided(exampleProfile(), at);
	expect(settings).toHaveLength(2);
	expect(settings![0]).toEqual(foundSet);
	expect(settings![1]).toMatchObject({id: 'set1', origin: 'solved', decidedAt: at, dialledIn: []});
	expect(settings![1]!.inputsHash).toMatch(/^2:[0-9a-f]{16}$/);
	expect(settings![1]!.channels.FC?.trimDb?.stepped).toBeGreaterThan(0);
});

test('withDecided gives a profile that the schema and its rules take', () => {
	const read = parseProfile(JSON.stringify(withDecided(exampleProfile(), at)), 'test');
	expect(read).toMatchObject({ok: true});
});

test('a decided set holds until a reading gives another value, and says for which', () => {
	const decided = withDecided(exampleProfile(), at);
	expect(situationOf(decided).kind).toBe('decided');
	const same = {...decided, meter: [...decided.meter!, {...quieterCentre, decibels: 73.4}]};
	expect(situationOf(same).kind).toBe('decided');
	const stale = situationOf(withReading(decided));
	expect(stale).toMatchObject({kind: 'stale', differing: expect.arrayContaining(['Front centre'])});
});

test('withDecided takes the place of a set of which nothing was typed in', () => {
	const twice = withDecided(withReading(withDecided(exampleProfile(), at)), at);
	expect(twice.settings!.map(({id}) => id)).toEqual(['found', 'set1']);
	expect(situationOf(twice).kind).toBe('decided');
});

test('withDecided keeps a set that was typed in, and the ticks of what did not change', () => {
	const ticked = ['FL', 'FC'].reduce(
		(profile, id) => withTick(profile, 'set1', id, true),
		withDecided(exampleProfile(), at),
	);
	const twice = withDecided(withReading(ticked), at);
	expect(twice.settings!.map(({id}) => id)).toEqual(['found', 'set1', 'set2']);
	// Of the centre only the trim is another; what stands beside it was typed in.
	expect(twice.settings![2]!.dialledIn).toEqual(['FL', 'FC.distance', 'FC.crossover']);
});

test('withDecided keeps a set that a reading was taken with', () => {
	const decided = withDecided(exampleProfile(), at);
	const proof: MeterReading = {...quieterCentre, round: 'proof', inForce: 'set1'};
	const twice = withDecided({...decided, meter: [...decided.meter!, proof, quieterCentre]}, at);
	expect(twice.settings!.map(({id}) => id)).toEqual(['found', 'set1', 'set2']);
});

test('withTick ticks once and takes the tick off again', () => {
	const decided = withDecided(exampleProfile(), at);
	const once = withTick(withTick(decided, 'set1', 'FL', true), 'set1', 'FL', true);
	expect(once.settings![1]!.dialledIn).toEqual(['FL']);
	expect(withTick(once, 'set1', 'FL', false).settings![1]!.dialledIn).toEqual([]);
});

test('nothing is to be typed in when nothing was measured', () => {
	expect(situationOf(exampleProfile({settings: [], tape: [], meter: []})).kind).toBe('nothing');
});

test('an undecided set names the channels that are not measured yet', () => {
	const profile = exampleProfile();
	const some = {...profile, tape: profile.tape!.slice(0, 2), meter: profile.meter!.slice(1)};
	expect(situationOf(some)).toMatchObject({
		kind: 'undecided',
		untimed: expect.arrayContaining(['Front centre']),
		untrimmed: ['Front left'],
	});
});
