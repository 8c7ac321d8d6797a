import {expect, test} from 'vitest';
import {driftText, historyText} from '../../../source/report/history/text.ts';
import type {RoomHistory} from '../../../source/study/comparison/history/historyEntry.ts';

const history: RoomHistory = {
	room: 'Attic',
	profiles: [
		{id: 'a', name: 'First', date: '2023-04-01'},
		{id: 'b', name: 'Last', date: '2026-04-01'},
	],
	channels: [
		{
			id: 'FR',
			name: 'Front right',
			points: [
				{date: '2023-04-01', distanceMetres: 2.9, levelDb: 75, trimDb: 0, driftDb: 0, sigmaDb: 0},
				{date: '2026-04-01', distanceMetres: 2.9, levelDb: 73.8, trimDb: 1, driftDb: -1.2, sigmaDb: 0.3},
			],
			drift: {fromDate: '2023-04-01', toDate: '2026-04-01', years: 3, value: -1.2, sigma: 0.3, isReal: true},
		},
	],
};

test('`historyText` shows profiles, figures from first to last, the trend, and the drift in words', () => {
	expect(historyText(history, {lengthUnit: 'm', width: 80}).split('\n')).toEqual([
		'Attic: 2 profiles, 2023-04-01 to 2026-04-01',
		'',
		'date        name   profile',
		'2023-04-01  First  a',
		'2026-04-01  Last   b',
		'',
		'channel      distance  level dB     trim dB     trend    drift dB',
		'Front right  2.90 m    75.0 → 73.8  0.0 → +1.0  █▁     −1.2 ± 0.3',
		'',
		'  - Front right: a drift of −1.2 dB (± 0.3 dB) over 3 years against the other',
		'    channels, distances taken into account: a failing driver, a turned knob, or',
		'    a sofa moved. Read it once more, then from close by.',
	]);
});

test('`driftText` has nothing to say of a drift within its uncertainty', () => {
	const channel = history.channels[0]!;
	expect(driftText({...channel, drift: {...channel.drift!, isReal: false}})).toBeUndefined();
});
