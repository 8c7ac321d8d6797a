import {atticWiring2026} from './atticWiring.ts';
import type {Story} from './story.ts';
import type {Truth} from './truth.ts';

/*
An invented attic under a sloped ceiling. From one year to the next the room is turned round, the row moves, a second sub and a
processor come in. It stays for tests of what the demo does not have.
*/
const front = {sensitivityDb: 88, lowLimitHertz: 45, watts: 120} as const;
const surround = {sensitivityDb: 86, lowLimitHertz: 70, watts: 80} as const;
const overhead = {sensitivityDb: 85, lowLimitHertz: 80, watts: 60} as const;

/** Last year: the screen on the gable without the stairs, one sub, a smaller centre speaker. */
export const atticTruth2025: Truth = {
	widthMetres: 4.203,
	lengthMetres: 5.612,
	ceilingMetres: [2.6, 1.9],
	// 331.45 m/s at 0 °C times the root of the absolute temperatures, and 0.4 m/s for the humidity.
	speedOfSound: 331.45 * Math.sqrt((273.15 + 19) / 273.15) + 0.4,
	screen: [2.1, 0.06, 1.12],
	seats: {middle: [2.1, 3.71, 1.06], left: [1.46, 3.74, 1.06], right: [2.75, 3.73, 1.06]},
	speakers: {
		FL: {...front, at: [0.72, 0.52, 0.96]},
		FR: {...front, at: [3.41, 0.44, 0.96]},
		FC: {sensitivityDb: 86.5, lowLimitHertz: 75, watts: 120, at: [2.06, 0.31, 0.55]},
		LS: {...surround, at: [0.31, 4.22, 1.35]},
		RS: {...surround, at: [3.9, 4.31, 1.32]},
		TpFL: {...overhead, at: [1.25, 2.31, 2.27]},
		TpFR: {...overhead, at: [2.95, 2.28, 1.99]},
		TpBL: {...overhead, at: [1.22, 4.92, 2.26]},
		TpBR: {...overhead, at: [2.98, 4.95, 1.98]},
	},
	subs: {sub1: {at: [3.83, 0.42, 0.24], levelAtOneMetreDb: 84}},
	processorLatencyMs: 0,
	backgroundDb: 41,
	air: {temperatureCelsius: 19, humidityPercent: 50},
};

/** This year: the screen on the other gable, a row nearer to it, a larger centre speaker, two subs behind a processor. */
export const atticTruth2026: Truth = {
	...atticTruth2025,
	ceilingMetres: [1.9, 2.6],
	speedOfSound: 331.45 * Math.sqrt((273.15 + 21.5) / 273.15) + 0.4,
	screen: [2.1, 0.05, 1.15],
	seats: {middle: [2.1, 3.3, 1.05], left: [1.45, 3.33, 1.05], right: [2.76, 3.32, 1.05]},
	speakers: {
		FL: {...front, at: [0.52, 0.45, 0.98]},
		FR: {...front, at: [3.6, 0.51, 0.98]},
		FC: {sensitivityDb: 89, lowLimitHertz: 55, watts: 120, at: [2.1, 0.3, 0.6]},
		LS: {...surround, at: [0.35, 3.95, 1.3]},
		RS: {...surround, at: [3.85, 4.06, 1.31]},
		TpFL: {...overhead, at: [1.2, 2, 2.02]},
		TpFR: {...overhead, at: [3, 2.02, 2.31]},
		TpBL: {...overhead, at: [1.21, 4.71, 2.02]},
		TpBR: {...overhead, at: [3.01, 4.65, 2.32]},
	},
	subs: {
		sub1: {at: [0.36, 0.41, 0.25], output: 'A', levelAtOneMetreDb: 84},
		sub2: {at: [3.81, 5.24, 0.25], output: 'B', levelAtOneMetreDb: 82.5},
	},
	processorLatencyMs: 5.2,
	backgroundDb: 39,
	air: {temperatureCelsius: 21.5, humidityPercent: 45},
};

const receiver: Story['receiver'] = {
	name: 'Invented receiver, distances in 5 cm steps',
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
	subOutputs: 1,
	invertsSubs: false,
};

const bassProcessor: NonNullable<Story['bassProcessor']> = {
	name: 'Invented bass processor, two outputs',
	latencyMs: atticTruth2026.processorLatencyMs,
	outputs: ['A', 'B'],
	delay: {stepMs: 0.1, minimumMs: 0, maximumMs: 50},
	gain: {stepDb: 0.5, minimumDb: -30, maximumDb: 6},
	invertsOutputs: true,
};

const invented =
	'An invented room, for show. No such attic exists; all readings were drawn at random from a made-up truth.';

const common = {
	screen: {widthMetres: 2.3, heightMetres: 1.29},
	seatNames: {middle: 'Sofa middle', left: 'Sofa left', right: 'Sofa right'},
	subNames: {sub1: 'Sub at the screen', sub2: 'Sub at the back'},
	receiver,
} as const;

const roomOf = ({ceilingMetres}: Truth): Story['room'] => ({
	name: 'Attic cinema',
	ceiling: {kind: 'sloped', between: 'wall:left-wall:right', heightsMetres: [...ceilingMetres]},
	decaySeconds: 0.35,
});

export const attic: readonly [older: Story, newer: Story] = [
	{
		...common,
		truth: atticTruth2025,
		name: 'Attic 2025',
		date: '2025-04-12',
		decidedAt: '2025-04-12T17:40:00Z',
		note: `${invented} Screen on the gable away from the stairs, one sub, the smaller centre speaker.`,
		room: roomOf(atticTruth2025),
		seed: 2025,
	},
	{
		...common,
		truth: atticTruth2026,
		name: 'Attic 2026',
		date: '2026-04-18',
		decidedAt: '2026-04-18T18:10:00Z',
		note: `${invented} Screen on the gable with the stairs, the row moved nearer, two subs behind a processor, a larger centre speaker.`,
		room: roomOf(atticTruth2026),
		bassProcessor,
		wiring: atticWiring2026(),
		seed: 2026,
	},
];
