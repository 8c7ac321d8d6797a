import {newProfile} from '../../../../source/profile/generic/newProfile.ts';
import type {MeterReading, Profile, SettingsSet} from '../../../../source/profile/types.ts';

const seat = 'seat1';
const bass = {kind: 'pink', fromHertz: 28.2, toHertz: 112.2} as const;

function level(source: string, decibels: number, signal?: MeterReading['signal']): MeterReading {
	return {
		source,
		seat,
		decibels,
		weighting: 'C',
		round: 'first',
		inForce: 'found',
		...(signal ? {signal} : {}),
	};
}

/** What was found in the boxes of the invented room: everything at zero, the crossover at 100 Hz. */
export const foundSet: SettingsSet = {
	id: 'found',
	name: 'Before the round',
	origin: 'found',
	masterVolumeDb: -20,
	channels: {
		FL: {trimDb: {stepped: 0}, distanceMetres: {stepped: 2.8}},
		FR: {trimDb: {stepped: 0}, distanceMetres: {stepped: 2.8}},
		FC: {trimDb: {stepped: 0}},
		LFE1: {trimDb: {stepped: 0}},
	},
	outputs: {A: {gainDb: {stepped: 0}}},
};

/** An invented room with three speakers and one sub behind a bass processor, taped and metered at one seat. */
export function exampleProfile(changes: Partial<Profile> = {}): Profile {
	const profile = newProfile({
		name: 'Attic, sofa in the middle',
		date: '2026-04-18',
		layout: '3.1',
		receiver: 'fine-metric',
		bassProcessor: 'digital',
	});
	return {
		...profile,
		tape: [
			{from: 'FL', to: seat, metres: 2.87},
			{from: 'FR', to: seat, metres: 2.9},
			{from: 'FC', to: seat, metres: 2.71},
			{from: 'sub1', to: seat, metres: 3.4},
		],
		meter: [
			level('FL', 75.4),
			level('FR', 74.1),
			level('FC', 73.4),
			level('sub1', 78.2, bass),
			level('background', 38),
		],
		settings: [foundSet],
		...changes,
	};
}
