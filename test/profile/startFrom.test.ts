import {expect, test} from 'vitest';
import {isStale} from '../../source/profile/ask/digest.ts';
import {decidedSettings} from '../../source/profile/ask/settings.ts';
import {checkProfile} from '../../source/profile/file/parse.ts';
import {startFrom} from '../../source/profile/startFrom.ts';
import {summarise} from '../../source/profile/summary.ts';
import {sampleProfile} from './sample.ts';

const next = {name: 'Next', date: '2027-01-01'} as const;

test('startFrom without readings keeps room, kit and channels, and the settings decided last as found', () => {
	const old = sampleProfile();
	old.air = {temperatureCelsius: 19};
	old.tape!.push({from: 'wall:left', to: 'wall:right', metres: 4.1}, {from: 'floor', to: 'FL', metres: 1});
	old.settings!.push({
		id: 'mine',
		origin: 'entered',
		inputsHash: 'x',
		dialledIn: ['FL'],
		channels: {FL: {trimDb: {stepped: 2}}},
	});
	old.settings!.push({id: 'later', origin: 'found', channels: {}});
	const profile = startFrom(old, {...next, readings: 'drop'});
	expect(checkProfile(profile)).toEqual([]);
	expect(profile).toMatchObject({
		...next,
		room: old.room,
		seats: old.seats,
		channels: old.channels,
		subs: old.subs,
		receiver: old.receiver,
		kit: old.kit,
		tape: old.tape!.slice(-2, -1),
		meter: [],
	});
	expect(profile.settings).toEqual([
		{id: 'last', origin: 'found', name: 'As decided on 2026-04-18', channels: {FL: {trimDb: {stepped: 2}}}},
	]);
	for (const gone of ['walk', 'responses', 'air', 'note']) expect(profile).not.toHaveProperty(gone);
	expect(old.tape).toHaveLength(6);
	// Nothing was decided, so nothing can be stale or be something to type in.
	expect(decidedSettings(profile)).toBeUndefined();
	expect(isStale(profile)).toBe(false);
	expect(summarise(profile)?.state).toBe('new');
});

test('startFrom with readings keeps all but the place of the walk', () => {
	const {walk: _, ...rest} = sampleProfile();
	expect(startFrom(sampleProfile(), {...next, readings: 'keep'})).toEqual({...rest, ...next});
});

test('startFrom does not call settings decided that were only found', () => {
	const old = {...sampleProfile(), settings: [{id: 'found', origin: 'found' as const, channels: {}}]};
	const {settings} = startFrom(old, {...next, readings: 'drop'});
	expect(settings).toEqual([{id: 'last', origin: 'found', name: 'As found on 2026-04-18', channels: {}}]);
});

test('startFrom gives no settings where none were', () => {
	const {settings: _, ...old} = sampleProfile();
	expect(startFrom(old, {...next, readings: 'drop'}).settings).toEqual([]);
});

test('summarise tells how far a round has come', () => {
	const whole = sampleProfile();
	expect(summarise({...whole, tape: [], meter: [], settings: []})?.state).toBe('new');
	expect(summarise({...whole, meter: whole.meter!.slice(0, 2)})?.state).toBe('measuring');
	expect(
		summarise({...whole, meter: [], settings: [{id: 'a', origin: 'entered', channels: {}}]})?.state,
	).toBe('decided');
	expect(summarise(whole)).toEqual({
		name: 'Sample',
		date: '2026-04-18',
		room: 'Loft',
		tapeReadings: 4,
		meterReadings: 3,
		state: 'proved',
	});
});

test.each([[null], [3], ['x'], [[]], [{name: 'x'}], [{name: 'x', date: 'y', room: null}]])(
	'summarise refuses %j',
	file => {
		expect(summarise(file)).toBeUndefined();
	},
);
