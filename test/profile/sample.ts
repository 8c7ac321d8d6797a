import type {Profile} from '../../source/profile/types.ts';

/** A small sound profile that uses every part of the format, for tests of reading and writing. */
export function sampleProfile(): Profile {
	return {
		format: 1,
		name: 'Sample',
		date: '2026-04-18',
		lengthUnit: 'ft-in',
		room: {
			name: 'Loft',
			widthMetres: 4,
			ceiling: {kind: 'sloped', between: 'wall:left-wall:right', heightsMetres: [1.9, 2.6]},
		},
		air: {temperatureCelsius: 21, humidityPercent: 45},
		screen: {widthMetres: 2.2},
		seats: [
			{id: 'sofa', name: 'Sofa middle', reference: true},
			{id: 'left', name: 'Sofa left', weight: 0.5},
		],
		channels: [
			{id: 'FL', speaker: {sensitivityDb: 88, sensitivityFor: '2.83 V', box: 'closed'}},
			{id: 'FR'},
			{id: 'LFE1', latencyMs: 1},
		],
		subs: [{id: 'sub1', name: 'Corner', fedBy: 'LFE1', processorOutput: 'A'}],
		receiver: {
			timing: {kind: 'distance', shownIn: 'ft', stepMetres: 0.03048, minimumMetres: 0, maximumMetres: 18.288},
			trim: {stepDb: 0.5, minimumDb: -12, maximumDb: 12},
			crossover: {choicesHertz: [60, 80, 100], scope: 'common', lfeLowPassChoicesHertz: [80, 120]},
			subOutputs: 1,
		},
		bassProcessor: {
			latencyMs: 4,
			outputs: ['A', 'B'],
			delay: {stepMs: 0.1, minimumMs: 0, maximumMs: 50},
			gain: {stepDb: 0.5, minimumDb: -40, maximumDb: 6},
		},
		kit: {tapeStepMetres: 0.001, meterWeighting: 'C'},
		target: {levelDb: 75},
		tape: [
			{from: 'sofa', to: 'FL', metres: 2.8575},
			{from: 'sofa', to: 'FR', metres: 2.86, note: 'again'},
			{from: 'FL', to: 'wall:left', metres: 0.92},
			{from: 'screen', to: 'floor', metres: 1.2},
		],
		meter: [
			{source: 'background', seat: 'sofa', decibels: 38, weighting: 'C', round: 'first'},
			{
				source: 'FL',
				seat: 'sofa',
				decibels: 74.2,
				weighting: 'C',
				signal: {kind: 'pink', fromHertz: 355, toHertz: 2818},
				round: 'first',
				inForce: 'old',
			},
			{
				source: ['FL', 'sub1'],
				seat: 'left',
				decibels: 71,
				weighting: 'C',
				signal: {kind: 'tone', hertz: 80},
				round: 'proof',
				inForce: {channels: {FL: {trimDb: {stepped: 1}}}},
			},
		],
		responses: [{source: 'FL', seat: 'sofa', sha256: 'abc'}],
		settings: [
			{
				id: 'old',
				origin: 'found',
				channels: {
					FL: {distanceMetres: {stepped: 2.9}, trimDb: {exact: 0.2, stepped: 0}, crossoverHertz: 'full'},
				},
				outputs: {A: {gainDb: {stepped: -3}}},
			},
		],
		walk: {prompt: 'meter FL sofa'},
	};
}
