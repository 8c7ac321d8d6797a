import {expect, test} from 'vitest';
import type {MeterReading, Profile} from '../../../../source/profile/types.ts';
import {toneReadings} from '../../../../source/study/calibration/blend/toneReadings.ts';
import type {Remark} from '../../../../source/study/calibration/result.ts';

const tone = (own: Partial<MeterReading>): MeterReading => ({
	source: 'FC',
	seat: 'sofa',
	decibels: 74,
	weighting: 'Z',
	signal: {kind: 'tone', hertz: 80},
	round: 'first',
	...own,
});
const profile = (...meter: MeterReading[]): Profile => ({
	format: 1,
	name: 'Invented den',
	date: '2026-01-01',
	room: {name: 'Invented den'},
	seats: [{id: 'sofa', name: 'Sofa', reference: true}],
	channels: [{id: 'FC'}],
	meter,
});

test('`toneReadings` takes tones of the first round at the seat, and nothing else', () => {
	const remarks: Remark[] = [];
	const taken = toneReadings(
		profile(
			tone({decibels: 71}),
			tone({decibels: 72, round: 'proof'}),
			tone({decibels: 73, seat: 'stool'}),
			tone({decibels: 74, setAside: true}),
			tone({decibels: 75, signal: {kind: 'pink', fromHertz: 500, toHertz: 2000}}),
		),
		'sofa',
		remarks,
	);
	expect(taken.map(({index, decibels}) => [index, decibels])).toEqual([[0, 71]]);
	expect(remarks).toEqual([]);
});

test('`toneReadings` leaves out a tone that hardly rises above the background, and says which', () => {
	const remarks: Remark[] = [];
	const background = tone({source: 'background', signal: undefined, decibels: 72});
	expect(toneReadings(profile(background, tone({decibels: 74})), 'sofa', remarks)).toEqual([]);
	expect(remarks[0]).toMatchObject({kind: 'doubt', code: 'tone-in-background'});
	expect(remarks[0]!.text).toContain('80 Hz');
});
