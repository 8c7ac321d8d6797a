import {cellarWiring2026} from './cellarWiring.ts';
import type {Story} from './story.ts';
import type {Truth} from './truth.ts';

const front = {sensitivityDb: 89, lowLimitHertz: 48, watts: 130} as const;
const olderSide = {sensitivityDb: 84.5, lowLimitHertz: 85, watts: 60} as const;
const newerSide = {sensitivityDb: 88, lowLimitHertz: 62, watts: 100} as const;
const back = {sensitivityDb: 86, lowLimitHertz: 70, watts: 80} as const;
const overhead = {sensitivityDb: 85.5, lowLimitHertz: 78, watts: 60} as const;

/** Last year: the second row low and far back, small surrounds beside the first. */
export const cellarTruth2025: Truth = {
	widthMetres: 4.618,
	lengthMetres: 6.354,
	ceilingMetres: [2.47, 2.47],
	// 331.45 m/s at 0 °C times the root of the absolute temperatures, and 0.4 m/s for the humidity.
	speedOfSound: 331.45 * Math.sqrt((273.15 + 18) / 273.15) + 0.4,
	screen: [2.31, 0.06, 1.15],
	seats: {
		middle: [2.31, 3.35, 1.05],
		left: [1.56, 3.41, 1.05],
		right: [3.07, 3.4, 1.05],
		back: [2.33, 5.27, 1.22],
	},
	speakers: {
		FL: {...front, at: [0.62, 0.47, 0.98]},
		FR: {...front, at: [3.98, 0.5, 0.98]},
		FC: {sensitivityDb: 88, lowLimitHertz: 58, watts: 130, at: [2.3, 0.33, 0.56]},
		SiL: {...olderSide, at: [0.31, 3.52, 1.22]},
		SiR: {...olderSide, at: [4.3, 3.55, 1.24]},
		BL: {...back, at: [0.58, 5.93, 1.31]},
		BR: {...back, at: [4.02, 5.9, 1.3]},
		TpSiL: {...overhead, at: [1.28, 3.31, 2.41]},
		TpSiR: {...overhead, at: [3.35, 3.29, 2.41]},
	},
	subs: {
		sub1: {at: [3.21, 0.36, 0.25], fedBy: 'LFE1', levelAtOneMetreDb: 80.5},
		sub2: {at: [0.33, 4.55, 0.25], fedBy: 'LFE2', levelAtOneMetreDb: 80},
	},
	processorLatencyMs: 0,
	backgroundDb: 36,
	air: {temperatureCelsius: 18, humidityPercent: 55},
};

/** This year: the riser re-built higher and nearer, the side surrounds replaced and hung between the rows. The rest stands. */
export const cellarTruth2026: Truth = {
	...cellarTruth2025,
	speedOfSound: 331.45 * Math.sqrt((273.15 + 19.5) / 273.15) + 0.4,
	seats: {...cellarTruth2025.seats, back: [2.32, 4.88, 1.43]},
	speakers: {
		...cellarTruth2025.speakers,
		SiL: {...newerSide, at: [0.17, 3.86, 1.52]},
		SiR: {...newerSide, at: [4.45, 3.84, 1.51]},
	},
	backgroundDb: 35,
	air: {temperatureCelsius: 19.5, humidityPercent: 50},
};

const invented =
	'An invented room, for show. No such cellar exists; all readings were drawn at random from a made-up truth.';

const receiver: Story['receiver'] = {
	name: 'Invented receiver, two outputs for subs',
	timing: {
		kind: 'distance',
		shownIn: 'm',
		stepMetres: 0.05,
		minimumMetres: 0,
		maximumMetres: 20,
		speedOfSoundMetresPerSecond: 343,
	},
	trim: {stepDb: 0.5, minimumDb: -10, maximumDb: 10},
	crossover: {
		choicesHertz: Array.from({length: 17}, (_, index) => 40 + 10 * index),
		scope: 'per channel',
		fullRange: true,
		highPass: {kind: 'butterworth', order: 2},
		lowPass: {kind: 'linkwitz-riley', order: 4},
		lfeLowPassChoicesHertz: [80, 100, 120, 150],
	},
	subOutputs: 2,
	invertsSubs: true,
};

const common: Pick<Story, 'room' | 'screen' | 'seatNames' | 'subNames' | 'receiver' | 'answered'> = {
	room: {name: 'Cellar cinema', ceiling: {kind: 'flat', heightMetres: 2.47}, decaySeconds: 0.4},
	screen: {widthMetres: 2.66, heightMetres: 1.5},
	seatNames: {
		middle: 'First row, middle',
		left: 'First row, left',
		right: 'First row, right',
		back: 'Second row, middle',
	},
	subNames: {sub1: 'Sub at the screen', sub2: 'Sub beside the riser'},
	receiver,
	answered: ['room:slope:flat', 'tape:links:none', 'meter:points:1', 'kit:processor:none'],
};

/** The demo: two rows of seats under a flat ceiling, two subs on two outputs of the receiver. */
export const cellar: readonly [older: Story, newer: Story] = [
	{
		...common,
		truth: cellarTruth2025,
		name: 'Cellar 2025',
		date: '2025-10-04',
		decidedAt: '2025-10-04T16:20:00Z',
		note: `${invented} The second row on a low riser near the back wall, small surrounds beside the first row.`,
		seed: 2054,
	},
	{
		...common,
		truth: cellarTruth2026,
		name: 'Cellar 2026',
		date: '2026-10-17',
		decidedAt: '2026-10-17T17:05:00Z',
		note: `${invented} The riser re-built higher and nearer, other surrounds at the sides, hung between the rows.`,
		wiring: cellarWiring2026(),
		seed: 2055,
	},
];
