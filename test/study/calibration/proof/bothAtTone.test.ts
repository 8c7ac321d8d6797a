import {expect, test} from 'vitest';
import type {MeterReading, Profile, SettingsSet} from '../../../../source/profile/types.ts';
import {proofPlan} from '../../../../source/study/calibration/proof/plan.ts';

const hertz = 80;
/** Arrival of the sub after the speaker with no delay in the boxes, ms. */
const lagMs = 2.3;

/** |M + S|² = |M|² + |S|² + 2|M||S|·cos φ with 70 dB of the speaker and 73 dB of the sub. */
function bothDb(subMs: number, isTurned: boolean): number {
	const phase = (2 * Math.PI * hertz * (lagMs + subMs)) / 1000 + (isTurned ? Math.PI : 0);
	return 10 * Math.log10(10 ** 7 + 10 ** 7.3 + 2 * 10 ** 7.15 * Math.cos(phase));
}

const set = (id: string, subMs: number, isTurned: boolean): SettingsSet => ({
	id,
	origin: id === 'before' ? 'found' : 'solved',
	channels: {
		FC: {trimDb: {stepped: 0}, delayMs: {stepped: 0}, crossoverHertz: 80},
		LFE1: {trimDb: {stepped: 0}, delayMs: {stepped: subMs}, polarityInverted: isTurned},
	},
});

function read(changes: Partial<MeterReading>, decibels: number): MeterReading {
	return {
		source: ['FC', 'sub1'],
		seat: 'sofa',
		decibels,
		weighting: 'Z',
		signal: {kind: 'tone', hertz},
		round: 'first',
		inForce: 'before',
		...changes,
	};
}

const room = (meter: readonly MeterReading[], now: SettingsSet): Profile => ({
	format: 1,
	name: 'Tones of both',
	date: '2026-04-18',
	room: {name: 'Tones of both'},
	seats: [{id: 'sofa', name: 'Sofa', reference: true}],
	channels: [{id: 'FC'}, {id: 'LFE1'}],
	subs: [{id: 'sub1', name: 'Sub', fedBy: 'LFE1'}],
	meter: [...meter],
	settings: [set('before', 1, false), now],
});

const planned = (profile: Profile) => proofPlan(profile).find(({signal}) => signal.kind === 'tone');

test('three readings of both, later each time, tell the level under any delay and polarity', () => {
	const meter = [0, 4.2, 8.3].map(addedDelayMs => read({addedDelayMs}, bothDb(1 + addedDelayMs, false)));
	for (const [subMs, isTurned] of [
		[1, false],
		[6.5, true],
		[10, false],
	] as const) {
		const expected = bothDb(subMs, isTurned);
		// Six decibels below the parts nothing is forecast: a hole.
		if (expected < 10 * Math.log10(10 ** 7 + 10 ** 7.3) - 6) continue;
		const item = planned(room(meter, set('now', subMs, isTurned)));
		expect(item!.predicted.value).toBeCloseTo(expected, 6);
	}
});

test('a polarity turned on purpose for a reading counts as it was', () => {
	const meter = [
		read({}, bothDb(1, false)),
		read({invertedSources: ['sub1']}, bothDb(1, true)),
		read({addedDelayMs: 3.1, invertedSources: ['sub1']}, bothDb(4.1, true)),
	];
	expect(planned(room(meter, set('now', 0.5, false)))!.predicted.value).toBeCloseTo(bothDb(0.5, false), 6);
});

test('two readings do not tell it, and nothing is asked', () => {
	const meter = [read({}, bothDb(1, false)), read({addedDelayMs: 4.2}, bothDb(5.2, false))];
	expect(planned(room(meter, set('now', 3, false)))).toBeUndefined();
});
