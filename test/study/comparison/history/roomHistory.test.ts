import {describe, expect, test} from 'vitest';
import type {ChannelFigures, HistoryEntry} from '../../../../source/study/comparison/history/historyEntry.ts';
import {roomHistory, yearsBetween} from '../../../../source/study/comparison/history/roomHistory.ts';
import {normal, uniform} from '../../calibration/proof/simulatedRoom.ts';

const ids = ['FL', 'FR', 'FC', 'LS', 'RS'];
type Own = (id: string, index: number) => number;

function entries(
	dates: readonly string[],
	own: Own,
	change: (id: string, index: number) => Partial<ChannelFigures> = () => ({}),
): HistoryEntry[] {
	return dates.map((date, index) => ({
		id: `p${index}`,
		name: `Round ${index}`,
		date,
		room: 'Attic',
		channels: new Map(
			ids.map(id => [
				id,
				{
					name: id,
					isSub: false,
					speaker: 'a',
					distanceMetres: 2,
					sigmaDb: 0.2,
					ownDb: own(id, index),
					...change(id, index),
				},
			]),
		),
	}));
}

const yearly = ['2023-04-01', '2024-04-01', '2025-04-01', '2026-04-01'];
const driftOf = (history: ReturnType<typeof roomHistory>, id: string) =>
	history.channels.find(channel => channel.id === id)?.drift;

test('`roomHistory` of nothing and of one profile has no drift', () => {
	expect(roomHistory([]).profiles).toEqual([]);
	expect(driftOf(roomHistory(entries(['2026-04-01'], () => 75)), 'FL')).toBeUndefined();
});

test('`roomHistory` puts profiles in the order of their dates', () => {
	const history = roomHistory(entries(['2026-04-01', '2024-04-01', '2025-04-01'], () => 75));
	expect(history.profiles.map(({date}) => date)).toEqual(['2024-04-01', '2025-04-01', '2026-04-01']);
});

test('`roomHistory` finds a channel that lost 0.4 dB a year, −1.2 dB over three years', () => {
	const history = roomHistory(entries(yearly, (id, index) => (id === 'FR' ? 75 - 0.4 * index : 75)));
	// A straight line through four exact points, less the leap day in the spacing.
	expect(driftOf(history, 'FR')?.value).toBeCloseTo(-1.2, 2);
	expect(driftOf(history, 'FL')?.value).toBeCloseTo(0, 9);
});

test('`roomHistory` takes a change common to all channels for another meter or master volume, not for drift', () => {
	const history = roomHistory(entries(yearly, (_, index) => 75 - 5 * index));
	for (const id of ids) expect(driftOf(history, id)?.value).toBeCloseTo(0, 9);
});

test('`roomHistory` takes what twice the distance loses, 6.02 dB in free field, for no drift, and widens its uncertainty', () => {
	const history = roomHistory(
		entries(
			yearly.slice(0, 2),
			(id, index) => (id === 'LS' && index === 1 ? 75 - 20 * Math.log10(2) : 75),
			(id, index) => (id === 'LS' && index === 1 ? {distanceMetres: 4} : {}),
		),
	);
	expect(driftOf(history, 'LS')?.value).toBeCloseTo(0, 9);
	expect(driftOf(history, 'LS')!.sigma).toBeGreaterThan(3);
});

test('`roomHistory` starts anew with another speaker', () => {
	const history = roomHistory(
		entries(
			yearly,
			(id, index) => (id === 'FC' && index >= 2 ? 80 : 75),
			(id, index) => (id === 'FC' && index >= 2 ? {speaker: 'b'} : {}),
		),
	);
	expect(driftOf(history, 'FC')).toMatchObject({
		fromDate: '2025-04-01',
		isReal: false,
		value: expect.closeTo(0, 9),
	});
});

describe('over 500 seeded rooms with meter noise of 0.3 dB', () => {
	const run = (lostDb: number) => {
		const random = uniform(7);
		const noise = normal(random);
		let real = 0;
		let covered = 0;
		for (let room = 0; room < 500; room++) {
			const history = roomHistory(
				entries(
					yearly,
					(id, index) => 75 + 0.3 * noise() - (id === 'FR' ? (lostDb * index) / 3 : 0),
					() => ({sigmaDb: 0.3}),
				),
			);
			const drift = driftOf(history, 'FR')!;
			if (drift.isReal) real++;
			if (Math.abs(drift.value + lostDb) <= 3 * drift.sigma) covered++;
		}

		return {real: real / 500, covered: covered / 500};
	};

	test('`roomHistory` calls a drift real in at most 1 % of rooms where nothing drifts', () => {
		expect(run(0).real).toBeLessThanOrEqual(0.01);
	});

	test('`roomHistory` covers a lost 2.5 dB with three standard uncertainties and calls it real', () => {
		const {real, covered} = run(2.5);
		expect(covered).toBeGreaterThanOrEqual(0.98);
		expect(real).toBeGreaterThanOrEqual(0.95);
	});
});

test('`yearsBetween` counts a leap year’s day', () => {
	expect(yearsBetween('2024-01-01', '2025-01-01') * 365.25).toBeCloseTo(366, 9);
});
