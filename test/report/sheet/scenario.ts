import {finding} from '../../../source/profile/finding.ts';
import type {Profile, SettingsSet} from '../../../source/profile/types.ts';
import type {Solution} from '../../../source/study/calibration/result.ts';
import type {SheetData} from '../../../source/study/comparison/sheetData.ts';
import {wiring} from '../../../source/study/wiring/wiring.ts';

/** An invented den with awkward names, to see that markup and tables hold them. */
export const profile: Profile = {
	format: 1,
	name: 'Invented den & <studio>',
	date: '2026-03-01',
	room: {name: 'Invented den'},
	air: {temperatureCelsius: 21, humidityPercent: 45},
	seats: [{id: 'sofa', name: 'Sofa | middle', reference: true}],
	channels: [{id: 'FL', speaker: {impedanceOhms: 8}}, {id: 'FR'}, {id: 'LFE1'}],
	subs: [{id: 'sub1', name: 'Front sub', fedBy: 'LFE1', processorOutput: 'A'}],
	receiver: {
		timing: {kind: 'distance', shownIn: 'ft', stepMetres: 0.03048, minimumMetres: 0, maximumMetres: 18},
		trim: {stepDb: 0.5, minimumDb: -12, maximumDb: 12},
		crossover: {choicesHertz: [60, 80, 100], scope: 'per channel'},
		subOutputs: 1,
	},
	wiring: {
		connections: [
			{
				id: 'c1',
				from: 'receiver/FL',
				to: 'FL/speaker',
				kind: 'speaker',
				label: 'left | front',
				runMetres: 6,
				awg: 14,
			},
		],
	},
	bassProcessor: {
		latencyMs: 2,
		outputs: ['A'],
		delay: {stepMs: 0.1, minimumMs: 0, maximumMs: 20},
		gain: {stepDb: 0.5, minimumDb: -20, maximumDb: 6},
	},
};

export const set: SettingsSet = {
	id: 'kept',
	origin: 'solved',
	decidedAt: '2026-03-02T10:00:00Z',
	lfeLowPassHertz: 120,
	channels: {
		// 30 steps of 0.1 ft.
		FL: {distanceMetres: {stepped: 0.9144}, trimDb: {stepped: -1.5}, crossoverHertz: 80},
		FR: {
			distanceMetres: {stepped: 3.048},
			trimDb: {stepped: 2},
			crossoverHertz: 'full',
			polarityInverted: true,
		},
		LFE1: {distanceMetres: {stepped: 6.096}, trimDb: {stepped: 0}},
	},
	outputs: {A: {delayMs: {stepped: 3.2}, gainDb: {stepped: -2}}},
};

export const solution: Solution = {
	seat: 'sofa',
	levelSeats: ['sofa'],
	speedOfSound: {metresPerSecond: 344.5, formula: 'Cramer 1993', sigma: 0.3},
	channels: [
		{
			id: 'FL',
			timing: {kind: 'distance', exact: 0.9, stepped: 0.9144, sigma: 0.01},
			trimDb: {exact: -1.4, stepped: -1.5, sigma: 0.2},
			crossoverHertz: 80,
			remarks: [],
		},
	],
	subs: [],
	outputs: [],
	masterVolumeChangeDb: -3,
	masterVolumeTurnDb: -3,
	remarks: [finding('problem', 'level-missing', ['FR'], {seat: 'sofa'})],
};

export const input = (own: Partial<SheetData> = {}): SheetData => ({
	profile,
	solution,
	set,
	isStale: false,
	wiring: wiring(profile),
	standing: {
		positions: new Map([
			['FL', {x: 0.8, y: 0.4, z: 1}],
			['FR', {x: 3.2, y: 0.4, z: 1}],
			['sofa', {x: 2, y: 4, z: 1.1}],
		]),
		widthMetres: 4,
		lengthMetres: 5,
		seatDistances: new Map([['FL', 3.8]]),
	},
	...own,
});
