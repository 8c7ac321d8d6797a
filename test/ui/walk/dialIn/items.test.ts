import {expect, test} from 'vitest';
import type {SettingsSet} from '../../../../source/profile/types.ts';
import {dialItems} from '../../../../source/ui/walk/dialIn/items.ts';
import {exampleProfile, foundSet} from './exampleProfile.ts';

const set = (channels: SettingsSet['channels'], rest: Partial<SettingsSet> = {}): SettingsSet => ({
	id: 'fresh',
	origin: 'solved',
	channels,
	...rest,
});
const stands = foundSet.channels;

test('dialItems of an empty set is empty', () => {
	expect(dialItems(exampleProfile(), set({}))).toEqual([]);
	expect(dialItems(exampleProfile(), set({FL: {}}))).toEqual([]);
});

test('dialItems lists what changes before what stays, and tells the former value', () => {
	const items = dialItems(exampleProfile(), set({FL: stands.FL, FC: {trimDb: {stepped: 1.5}}}));
	expect(items.map(({title, isChanged}) => [title, isChanged])).toEqual([
		['Front centre', true],
		['Front left', false],
	]);
	expect(items[0]!.values).toMatchObject([{label: 'Trim', value: '+1.5 dB', was: '0.0 dB', isChanged: true}]);
});

test('dialItems lists the processor after the channels and the master volume last', () => {
	const items = dialItems(
		exampleProfile(),
		set(
			{FC: {trimDb: {stepped: 0}}},
			{outputs: {A: {delayMs: {stepped: 0.52}}}, lfeLowPassHertz: 120, masterVolumeDb: -19.4},
		),
	);
	expect(items.map(({title}) => title)).toEqual([
		'Front centre',
		'Output A',
		'Low-pass of the LFE channel',
		'Master volume',
	]);
	expect(items[1]).toMatchObject({box: 'bass processor', about: 'it feeds Subwoofer'});
	expect(items.at(-1)).toMatchObject({caution: expect.stringContaining('Ears')});
	expect(items.at(-1)!.values).toMatchObject([{value: '−19.4 dB', was: '−20.0 dB'}]);
});

test('dialItems tells how far to turn the master when its scale is not known', () => {
	const profile = exampleProfile({settings: []});
	const items = dialItems(profile, set({}), 0.4);
	expect(items.map(({values}) => values.map(({label, value}) => [label, value]))).toEqual([
		[['Turn it by', '+0.4 dB']],
	]);
	expect(dialItems(profile, set({}), 0.04)).toEqual([]);
});

test('dialItems writes distances in the unit and step of the receiver, not of the tape', () => {
	const {receiver, ...rest} = exampleProfile();
	const timing = {
		kind: 'distance',
		shownIn: 'ft',
		stepMetres: 0.03048,
		minimumMetres: 0,
		maximumMetres: 9,
	} as const;
	const profile = {...rest, receiver: {...receiver!, timing}};
	// 2.8956 m are 9.5 ft exactly.
	const [item] = dialItems(profile, set({FC: {distanceMetres: {stepped: 2.8956}}}));
	expect(item!.values[0]).toMatchObject({label: 'Distance', value: '9.5 ft'});
});

test('dialItems tells polarity only where it is or was inverted', () => {
	const profile = exampleProfile();
	const polarity = (isInverted: boolean) =>
		dialItems(profile, set({LFE1: {trimDb: {stepped: 0}, polarityInverted: isInverted}}))[0]!.values.find(
			({label}) => label === 'Polarity',
		);
	expect(polarity(false)).toBeUndefined();
	expect(polarity(true)).toMatchObject({value: 'inverted', was: 'normal'});
});

test('dialItems counts an item as done when its id is ticked', () => {
	const [item] = dialItems(exampleProfile(), set({FC: {trimDb: {stepped: 1}}}, {dialledIn: ['FC']}));
	expect(item!.isDone).toBe(true);
});
