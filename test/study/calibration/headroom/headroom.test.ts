import {expect, test} from 'vitest';
import type {Profile} from '../../../../source/profile/types.ts';
import {headroom} from '../../../afresh.ts';

const speaker = {
	sensitivityDb: 88,
	sensitivityFor: '1 W',
	amplifierWatts: 100,
	impedanceOhms: 8,
	lowLimitHertz: 60,
} as const;

function profileWith(change: Partial<Profile> = {}): Profile {
	return {
		format: 1,
		name: 'Invented room',
		date: '2026-04-18',
		room: {name: 'Invented room'},
		seats: [
			{id: 'sofa', name: 'Sofa', reference: true},
			{id: 'back', name: 'Back'},
		],
		channels: [{id: 'FL', speaker}, {id: 'FR', speaker: {...speaker, sensitivityDb: 85}}, {id: 'LFE1'}],
		subs: [
			{id: 'sub1', name: 'One', fedBy: 'LFE1', maximumLevelDb: 120},
			{id: 'sub2', name: 'Two', fedBy: 'LFE1', maximumLevelDb: 120},
		],
		tape: ['FL', 'FR', 'sub1', 'sub2'].flatMap(from => [
			{from, to: 'sofa', metres: 4},
			{from, to: 'back', metres: 5},
		]),
		...change,
	};
}

test('headroom calls it a problem when nothing is known, and still lists every channel', () => {
	const result = headroom(profileWith({channels: [{id: 'FC'}], subs: [], tape: []}));
	expect(result.first).toBeUndefined();
	expect(result.sources[0]!.missing).toEqual(['sensitivity', 'amplifier power', 'impedance', 'distance']);
	expect(result.remarks.map(({code}) => code)).toContain('headroom-nothing-known');
});

// By hand: 88 dB + 20 dB − 20·lg 4 = 95.96 dB at 4 m; 105 dB are asked for, so −9.04 dB. FR has 3 dB less, and the
// back seat another 20·lg(5/4) = 1.94 dB: the first to give out, at −13.98 dB.
test('headroom finds the first channel to give out and the master volume at which it does', () => {
	const {sources, first} = headroom(profileWith());
	expect(sources[0]!.seats[0]!.reachDb).toBeCloseTo(95.9588, 4);
	expect(sources[0]!.seats[0]!.marginDb).toBeCloseTo(-9.0412, 4);
	expect(first).toMatchObject({source: 'FR', seat: 'back'});
	expect(first!.masterVolumeDb).toBeCloseTo(-13.9794, 4);
});

// By hand: 115 dB with two times 105 dB on energy is 10·lg(10^11.5 + 2·10^10.5) = 115.7918 dB. Two equal subs in phase
// are 6.02 dB above one: 120 + 6.0206 − 12.0412 = 113.9794 dB.
test('headroom loads the subs with LFE and with the bass taken from high-passed channels', () => {
	const subs = headroom(profileWith()).sources.find(({source}) => source === 'subs')!;
	expect(subs.neededDb).toBeCloseTo(115.7918, 4);
	expect(subs.seats[0]!.reachDb).toBeCloseTo(113.9794, 4);
});

test('headroom leaves the bass with channels that are set to full range, and doubts their figure', () => {
	const settings = [
		{
			id: 'now',
			origin: 'entered' as const,
			channels: {FL: {crossoverHertz: 'full' as const}, FR: {crossoverHertz: 80}},
		},
	];
	const {sources, remarks} = headroom(profileWith({settings}));
	expect(sources.find(({source}) => source === 'subs')!.neededDb).toBeCloseTo(115.4139, 4);
	expect(remarks.map(({code}) => code)).toContain('full-range-excursion');
});

test('headroom adds room gain to the subs only where the profile states it', () => {
	const reach = (profile: Profile) => headroom(profile).sources.at(-1)!.seats[0]!.reachDb!;
	const gained = profileWith({room: {name: 'Invented room', bassGainDb: 4}});
	expect(reach(gained) - reach(profileWith())).toBeCloseTo(4, 12);
	expect(headroom(profileWith()).roomGainDb).toBe(0);
});

test('headroom tells no level for subs of which one is unknown', () => {
	const profile = profileWith();
	const subs = headroom({
		...profile,
		subs: [profile.subs![0]!, {id: 'sub2', name: 'Two', fedBy: 'LFE1'}],
	}).sources.at(-1)!;
	expect(subs.seats[0]!.reachDb).toBeUndefined();
	expect(subs.missing).toEqual(['largest level of each sub']);
});
