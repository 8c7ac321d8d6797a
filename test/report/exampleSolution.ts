import type {ChannelId} from '../../source/profile/types.ts';
import {sayIn} from '../../source/report/said/say.ts';
import type {ChannelSolution, Solution} from '../../source/study/calibration/result.ts';

/** A channel of an invented solution: distance in metres, stepped delay in ms, level and trim in dB. */
export function exampleChannel(
	id: ChannelId,
	metres: number,
	delayMs: number,
	levelDb: number,
	trimDb: number,
): ChannelSolution {
	return {
		id,
		distance: {metres, sigmaMetres: 0.003, from: 'reading', readings: 1},
		timing: {kind: 'delay', exact: delayMs + 0.03, stepped: delayMs, sigma: 0.01},
		level: {
			decibels: levelDb,
			sigmaDb: 0.3,
			repeats: 2,
			spreadDb: 0.2,
			backgroundCorrectionDb: 0,
			weightingCorrectionDb: 0,
		},
		trimDb: {exact: trimDb + 0.1, stepped: trimDb, sigma: 0.3},
		remarks: [],
	};
}

/** An invented solution for a small room: three channels in front, four around, one sub behind a processor. */
export function exampleSolution(changes: Partial<Solution> = {}): Solution {
	return {
		seat: 'sofa',
		levelSeats: ['sofa'],
		speedOfSound: {metresPerSecond: 343.6, formula: 'Cramer 1993'},
		channels: [
			exampleChannel('FL', 2.87, 3.2, 75.4, -0.5),
			exampleChannel('FC', 2.71, 3.7, 73.9, 1),
			exampleChannel('FR', 2.9, 3.1, 75.1, 0),
			exampleChannel('LS', 1.92, 6, 74.2, 0.5),
			exampleChannel('RS', 2.02, 5.7, 74.6, 0.5),
			exampleChannel('TpSiL', 1.94, 5.9, 73.8, 1),
			exampleChannel('TpSiR', 1.96, 5.9, 73.6, 1.5),
			exampleChannel('LFE1', 3.4, 0, 78, -3),
		],
		subs: [{id: 'sub1', fedBy: 'LFE1', output: 'out1', remarks: []}],
		outputs: [
			{
				id: 'out1',
				subs: ['sub1'],
				delayMs: {exact: 1.21, stepped: 1.2, sigma: 0.1},
				gainDb: {exact: -2.04, stepped: -2, sigma: 0.4},
				polarityInverted: true,
				remarks: [],
			},
		],
		masterVolumeChangeDb: 0.4,
		masterVolumeTurnDb: 0,
		worstTimingErrorMs: 0.08,
		worstLevelErrorDb: 0.4,
		remarks: [],
		...changes,
	};
}

/** Metres, and the plain names of channels. */
export const exampleSay = sayIn({seats: []});
