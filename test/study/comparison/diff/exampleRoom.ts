import type {ChannelId} from '../../../../source/profile/channels.ts';
import type {Profile, Receiver} from '../../../../source/profile/types.ts';
import type {ChannelSolution, Dialled, Solution} from '../../../../source/study/calibration/result.ts';

/** What one speaker of the invented room is: its distance, latency, level read with a trim of 0 dB, low limit. */
export type Speaker = {
	readonly id: ChannelId;
	readonly metres: number;
	readonly latencyMs?: number;
	readonly levelDb: number;
	readonly lowLimitHertz?: number;
};

export type Arrangement = {
	readonly speakers: readonly Speaker[];
	readonly speedOfSound: number;
	readonly kind: 'delay' | 'distance';
	readonly receiverSpeed: number;
	readonly targetDb: number;
	readonly weightingCorrectionDb: number;
	readonly backgroundCorrectionDb: number;
	readonly meterOffsetDb: number;
	readonly trimInForceDb: number;
	readonly masterVolumeDb: number;
	/** Shift of all timing entries and trims that the joint rounding chose. */
	readonly timingShift: number;
	readonly trimShift: number;
};

export const usualArrangement: Arrangement = {
	speakers: [
		{id: 'FL', metres: 2.87, levelDb: 75.4, lowLimitHertz: 55},
		{id: 'FR', metres: 2.91, levelDb: 74.9, lowLimitHertz: 55},
		{id: 'FC', metres: 2.71, levelDb: 73.9, lowLimitHertz: 70},
		{id: 'LS', metres: 1.95, levelDb: 76.1, lowLimitHertz: 90},
		{id: 'RS', metres: 2.02, levelDb: 75.8, lowLimitHertz: 90},
	],
	speedOfSound: 344,
	kind: 'delay',
	receiverSpeed: 343,
	targetDb: 75,
	weightingCorrectionDb: 0,
	backgroundCorrectionDb: 0,
	meterOffsetDb: 0,
	trimInForceDb: 0,
	masterVolumeDb: 0,
	timingShift: 0,
	trimShift: 0,
};

function receiverOf({kind, receiverSpeed}: Arrangement): Receiver {
	return {
		timing:
			kind === 'delay'
				? {kind, stepMs: 0.1, minimumMs: 0, maximumMs: 30}
				: {
						kind,
						shownIn: 'm',
						stepMetres: 0.01,
						minimumMetres: 0,
						maximumMetres: 18,
						speedOfSoundMetresPerSecond: receiverSpeed,
					},
		trim: {stepDb: 0.5, minimumDb: -12, maximumDb: 12},
		crossover: {choicesHertz: [40, 60, 80, 90, 100, 120], scope: 'per channel'},
		subOutputs: 1,
	};
}

const stepTo = (value: number, step: number) => Math.round(value / step) * step;

/**
An invented room and the solution that the laws of delay and trim give for it, computed here from the laws alone:
delay = max t − t, distance entry = t·c, trim = trim in force + target − level.
*/
export function arrange(arrangement: Arrangement): {readonly profile: Profile; readonly solution: Solution} {
	const {speakers, speedOfSound, kind, receiverSpeed} = arrangement;
	const arrivals = speakers.map(({metres, latencyMs}) => (1000 * metres) / speedOfSound + (latencyMs ?? 0));
	const latest = Math.max(...arrivals);
	const dial = (exact: number, shift: number, step: number): Dialled => ({
		exact,
		stepped: stepTo(exact + shift, step),
		sigma: step / 4,
	});
	const inForce = {
		channels: Object.fromEntries(
			speakers.map(({id}) => [id, {trimDb: {stepped: arrangement.trimInForceDb}}]),
		),
		masterVolumeDb: arrangement.masterVolumeDb,
	};
	const corrections =
		arrangement.weightingCorrectionDb + arrangement.backgroundCorrectionDb + arrangement.meterOffsetDb;
	const channels = speakers.map(({id, metres, levelDb}, index): ChannelSolution => {
		const read = levelDb + arrangement.trimInForceDb + arrangement.masterVolumeDb;
		const level = read + corrections;
		const timing =
			kind === 'delay'
				? dial(latest - arrivals[index]!, arrangement.timingShift, 0.1)
				: dial((arrivals[index]! * receiverSpeed) / 1000, arrangement.timingShift, 0.01);
		return {
			id,
			distance: {metres, sigmaMetres: 0.003, from: 'reading', readings: 1},
			arrivalMs: {value: arrivals[index]!, sigma: 0.01},
			timing: {...timing, kind},
			level: {
				decibels: level,
				sigmaDb: 0.3,
				repeats: 1,
				spreadDb: 0,
				backgroundCorrectionDb: arrangement.backgroundCorrectionDb,
				weightingCorrectionDb: arrangement.weightingCorrectionDb,
			},
			trimDb: dial(arrangement.trimInForceDb + arrangement.targetDb - level, arrangement.trimShift, 0.5),
			remarks: [],
		};
	});
	const profile: Profile = {
		format: 1,
		name: 'Invented arrangement',
		date: '2026-04-18',
		room: {name: 'Garden studio', widthMetres: 4.1, lengthMetres: 5.6},
		seats: [{id: 'sofa', name: 'Sofa middle', reference: true}],
		channels: speakers.map(({id, latencyMs, lowLimitHertz}) => ({
			id,
			...(latencyMs === undefined ? {} : {latencyMs}),
			...(lowLimitHertz === undefined ? {} : {speaker: {lowLimitHertz}}),
		})),
		receiver: receiverOf(arrangement),
		kit: {meterOffsetDb: arrangement.meterOffsetDb},
		target: {levelDb: arrangement.targetDb},
		tape: speakers.map(({id, metres}) => ({from: id, to: 'sofa', metres})),
		meter: speakers.map(({id, levelDb}) => ({
			source: id,
			seat: 'sofa',
			decibels: levelDb + arrangement.trimInForceDb + arrangement.masterVolumeDb,
			weighting: 'C',
			round: 'first',
			inForce,
		})),
	};
	return {
		profile,
		solution: {
			seat: 'sofa',
			levelSeats: ['sofa'],
			speedOfSound: {metresPerSecond: speedOfSound, formula: 'stated', sigma: 0.6},
			channels,
			subs: [],
			outputs: [],
			remarks: [],
		},
	};
}
