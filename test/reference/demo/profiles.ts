import {inputsHash} from '../../../source/profile/ask/digest.ts';
import type {ChannelId, MeterReading, Profile, SettingsSet} from '../../../source/profile/types.ts';
import {blend} from '../../../source/study/calibration/blend/blend.ts';
import {blendInputs} from '../../../source/study/calibration/blend/blendInputs.ts';
import {prove} from '../../../source/study/calibration/proof/prove.ts';
import {solve} from '../../../source/study/calibration/solve.ts';
import {toSettingsSet} from '../../../source/study/calibration/toSettingsSet.ts';
import {lfeTick, masterTick} from '../../../source/ui/walk/dialIn/inForceBefore.ts';
import {blendReading, levelRound, type Round, subsTogether} from './meter.ts';
import {seededRandom} from './random.ts';
import {tapeRound} from './tape.ts';
import {type Truth, truth2025, truth2026} from './truth.ts';
import {wiring2026} from './wiring.ts';

const receiver: NonNullable<Profile['receiver']> = {
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

const bassProcessor: NonNullable<Profile['bassProcessor']> = {
	name: 'Invented bass processor, two outputs',
	latencyMs: truth2026.processorLatencyMs,
	outputs: ['A', 'B'],
	delay: {stepMs: 0.1, minimumMs: 0, maximumMs: 50},
	gain: {stepDb: 0.5, minimumDb: -30, maximumDb: 6},
	invertsOutputs: true,
};

const seatNames: Readonly<Record<string, string>> = {
	middle: 'Sofa middle',
	left: 'Sofa left',
	right: 'Sofa right',
};
const invented =
	'An invented room, for show. No such attic exists; all readings were drawn at random from a made-up truth.';

function parts(
	truth: Truth,
): Pick<Profile, 'room' | 'air' | 'screen' | 'seats' | 'channels' | 'subs' | 'receiver' | 'kit' | 'target'> {
	return {
		room: {
			name: 'Attic cinema',
			ceiling: {kind: 'sloped', between: 'wall:left-wall:right', heightsMetres: [...truth.ceilingMetres]},
			decaySeconds: 0.35,
		},
		air: {...truth.air},
		screen: {widthMetres: 2.3, heightMetres: 1.29},
		seats: Object.keys(truth.seats).map(id => ({
			id,
			name: seatNames[id]!,
			...(id === 'middle' ? {reference: true} : {weight: 0.5}),
		})),
		channels: [
			...(
				Object.entries(truth.speakers) as Array<[ChannelId, NonNullable<Truth['speakers'][ChannelId]>]>
			).map(([id, speaker]) => ({
				id,
				speaker: {
					sensitivityDb: speaker.sensitivityDb,
					sensitivityFor: '2.83 V' as const,
					impedanceOhms: 8,
					amplifierWatts: speaker.watts,
					lowLimitHertz: speaker.lowLimitHertz,
					lowLimitDropDb: 3 as const,
					box: 'closed' as const,
				},
			})),
			{id: 'LFE1'},
		],
		subs: Object.entries(truth.subs).map(([id, {output}]) => ({
			id,
			name: id === 'sub1' ? 'Sub at the screen' : 'Sub at the back',
			fedBy: 'LFE1' as const,
			...(output === undefined ? {} : {processorOutput: output}),
			lowLimitHertz: 22,
			lowLimitDropDb: 6 as const,
			upperLimitHertz: 180,
			box: 'vented' as const,
			maximumLevelDb: 112,
		})),
		receiver: structuredClone(receiver),
		kit: {tapeStepMetres: 0.001, meterSigmaDb: 0.3, meterWeighting: 'C'},
		target: {levelDb: 75, seats: 'reference'},
	};
}

/** The factory settings: every distance 3 m, every trim 0. */
function factorySettings(truth: Truth): SettingsSet {
	const ids = [...(Object.keys(truth.speakers) as ChannelId[]), 'LFE1' as const];
	return {
		id: 'found',
		name: 'Factory settings',
		origin: 'found',
		masterVolumeDb: 0,
		channels: Object.fromEntries(
			ids.map(id => [
				id,
				{distanceMetres: {stepped: 3}, trimDb: {stepped: 0}, ...(id === 'LFE1' ? {} : {crossoverHertz: 80})},
			]),
		),
	};
}

/** What the program makes of the first round, dialled in and ticked; `decide.ts` is the pocket calculator that it is held against. */
function dialledIn(
	profile: Profile,
	decidedAt: string,
	id = 'decided',
	name = 'Dialled in after the round',
): SettingsSet {
	const set = toSettingsSet(solve(profile), {
		id,
		name,
		decidedAt,
		inputsHash: inputsHash(profile),
	});
	return {
		...set,
		dialledIn: [...Object.keys(set.channels), ...Object.keys(set.outputs ?? {}), lfeTick, masterTick],
	};
}

/** What the blend asks for, read under the set that stands, until it asks no more. */
function blended(profile: Profile, round: Round): Profile {
	const {blocks, status} = blend(blendInputs(profile), 'tones');
	const open = blocks.flatMap(({steps}) => steps).filter(({isTaken}) => !isTaken);
	if (open.length === 0 || ['kept', 'put back', 'stands'].includes(status)) return profile;
	return blended(
		{...profile, meter: [...profile.meter!, ...open.map(step => blendReading(round, step))]},
		round,
	);
}

/** What the second round asks for besides levels: noise about the crossover as the blend left it. */
function promised(profile: Profile, proof: Round): MeterReading[] {
	return prove(profile).missing.flatMap(({source: sounding, seat, signal}) => {
		const source = [...sounding];
		const playInto = source.filter(id => !(id in proof.truth.subs));
		const step = {source, seat, signal, playInto, added: {delayMs: 0, isTurned: false}};
		return [blendReading(proof, step), blendReading(proof, step)];
	});
}

function wholeRound(
	base: Profile,
	truth: Truth,
	found: SettingsSet,
	seed: number,
	decidedAt: string,
): Profile {
	const random = seededRandom(seed);
	const tape = tapeRound(truth, random);
	const first: Round = {truth, settings: found, random, round: 'first'};
	const levels = {...base, tape, meter: levelRound(first, 'middle', 3, true), settings: [found]};
	const distances = dialledIn(levels, decidedAt, 'distances', 'Dialled in by distances and levels');
	const standing: Round = {truth, settings: distances, random, round: 'first'};
	const together = {
		...levels,
		meter: [...levels.meter, ...subsTogether(standing, 'middle', 3)],
		settings: [found, distances],
	};
	const read = blended(together, standing);
	const decided = dialledIn(read, decidedAt);
	const proof: Round = {truth, settings: decided, random, round: 'proof'};
	const again = {
		...read,
		meter: [...read.meter!, ...levelRound(proof, 'middle', 2, false)],
		settings: [found, distances, decided],
	};
	return {...again, meter: [...again.meter, ...promised(again, proof)]};
}

/** Last year's profile of the invented room. */
export function attic2025(): Profile {
	const base: Profile = {
		format: 1,
		name: 'Attic 2025',
		date: '2025-04-12',
		note: `${invented} Screen on the gable away from the stairs, one sub, the smaller centre speaker.`,
		lengthUnit: 'm',
		...parts(truth2025),
	};
	return wholeRound(base, truth2025, factorySettings(truth2025), 2025, '2025-04-12T17:40:00Z');
}

/** This year's profile: turned round, with two subs behind a processor and another centre speaker. */
export function attic2026(): Profile {
	const lastYear = attic2025().settings!.find(({id}) => id === 'decided')!;
	const {dialledIn: _, decidedAt: __, ...stood} = lastYear;
	const processorAtZero = {delayMs: {stepped: 0}, gainDb: {stepped: 0}, polarityInverted: false};
	// The centre is blended at the crossover that stood: 80 Hz.
	const found: SettingsSet = {
		...stood,
		id: 'found',
		name: 'As decided on 2025-04-12',
		origin: 'found',
		outputs: {A: processorAtZero, B: {...processorAtZero}},
	};
	const base: Profile = {
		format: 1,
		name: 'Attic 2026',
		date: '2026-04-18',
		note: `${invented} Screen on the gable with the stairs, the row moved nearer, two subs behind a processor, a larger centre speaker.`,
		lengthUnit: 'm',
		...parts(truth2026),
		bassProcessor: structuredClone(bassProcessor),
		wiring: wiring2026(),
	};
	return wholeRound(base, truth2026, found, 2026, '2026-04-18T18:10:00Z');
}
