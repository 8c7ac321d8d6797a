import {inputsHash} from '../../../source/profile/ask/digest.ts';
import {isLfe} from '../../../source/profile/channels.ts';
import type {ChannelId, MeterReading, Profile, SettingsSet} from '../../../source/profile/types.ts';
import {blend} from '../../../source/study/calibration/blend/blend.ts';
import {prove} from '../../../source/study/calibration/proof/prove.ts';
import {toSettingsSet} from '../../../source/study/calibration/toSettingsSet.ts';
import {lfeTick, masterTick} from '../../../source/ui/walk/dialIn/inForceBefore.ts';
import {blendInputs, solve} from '../../afresh.ts';
import {blendReading, levelRound, type Round, subsTogether} from './meter.ts';
import {seededRandom} from './random.ts';
import type {Story} from './story.ts';
import {tapeRound} from './tape.ts';
import type {Truth} from './truth.ts';

const lfeOf = (truth: Truth) => [...new Set(Object.values(truth.subs).map(({fedBy = 'LFE1'}) => fedBy))];

function parts({
	truth,
	room,
	screen,
	seatNames,
	subNames,
	receiver,
}: Story): Pick<
	Profile,
	'room' | 'air' | 'screen' | 'seats' | 'channels' | 'subs' | 'receiver' | 'kit' | 'target'
> {
	return {
		room: structuredClone(room),
		air: {...truth.air},
		screen: {...screen},
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
			...lfeOf(truth).map(id => ({id})),
		],
		subs: Object.entries(truth.subs).map(([id, {output, fedBy = 'LFE1'}]) => ({
			id,
			name: subNames[id]!,
			fedBy,
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
	const ids: ChannelId[] = [...(Object.keys(truth.speakers) as ChannelId[]), ...lfeOf(truth)];
	return {
		id: 'found',
		name: 'Factory settings',
		origin: 'found',
		masterVolumeDb: 0,
		channels: Object.fromEntries(
			ids.map(id => [
				id,
				{distanceMetres: {stepped: 3}, trimDb: {stepped: 0}, ...(isLfe(id) ? {} : {crossoverHertz: 80})},
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

function profileOf(story: Story, found: SettingsSet): Profile {
	const {truth, name, date, note, bassProcessor, wiring, answered, seed, decidedAt} = story;
	const base: Profile = {
		format: 1,
		name,
		date,
		note,
		lengthUnit: 'm',
		...parts(story),
		...(bassProcessor && {bassProcessor: structuredClone(bassProcessor)}),
		...(wiring && {wiring}),
		...(answered && {walk: {answered: [...answered]}}),
	};
	return wholeRound(base, truth, found, seed, decidedAt);
}

/** Two years of one room: the second starts from what was decided in the first. */
export function twoYears([older, newer]: readonly [Story, Story]): readonly [older: Profile, newer: Profile] {
	const before = profileOf(older, factorySettings(older.truth));
	const {dialledIn: _, decidedAt: __, ...stood} = before.settings!.find(({id}) => id === 'decided')!;
	const processorAtZero = {delayMs: {stepped: 0}, gainDb: {stepped: 0}, polarityInverted: false};
	const outputs = newer.bassProcessor?.outputs.map(id => [id, {...processorAtZero}]);
	const found: SettingsSet = {
		...stood,
		id: 'found',
		name: `As decided on ${older.date}`,
		origin: 'found',
		...(outputs && {outputs: Object.fromEntries(outputs)}),
	};
	return [before, profileOf(newer, found)];
}
