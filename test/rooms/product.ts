import {newProfile} from '../../source/profile/generic/newProfile.ts';
import {usualMainsBand, usualSubBand} from '../../source/profile/practice.ts';
import type {MeterReading, Profile, RecordedResponse, SettingsSet} from '../../source/profile/types.ts';
import {blend} from '../../source/study/calibration/blend/blend.ts';
import type {BlendWay} from '../../source/study/calibration/blend/odds.ts';
import {readingOfStep} from '../../source/study/calibration/blend/readingOfStep.ts';
import type {BlendBlock, BlendStep} from '../../source/study/calibration/blend/steps.ts';
import {judgedRound} from '../../source/study/calibration/proof/judgedRound.ts';
import {proofPlan} from '../../source/study/calibration/proof/plan.ts';
import {prove} from '../../source/study/calibration/proof/prove.ts';
import {toSettingsSet} from '../../source/study/calibration/toSettingsSet.ts';
import {separateByLfe} from '../../source/study/hearing/apart/fromLfe.ts';
import {statedLowPasses} from '../../source/study/hearing/apart/statedLowPasses.ts';
import type {HeardPlaying} from '../../source/study/hearing/heardPlaying.ts';
import {keptPoints} from '../../source/study/hearing/keepRound.ts';
import {profileBlend} from '../../source/study/hearing/profileBlend.ts';
import {responseFrequencies} from '../../source/study/hearing/responses.ts';
import {withRound} from '../../source/study/hearing/takeRound.ts';
import {blendInputs, solve} from '../afresh.ts';
import type {Sounded} from './instruments.ts';
import {weightingC} from './physics/filters.ts';
import type {Spectrum} from './physics/spectrum.ts';
import {mainIds, type SourceId, type SubId, subIds} from './places.ts';
import {isMainId, isSubId, outputOf, type Playing} from './sound.ts';
import type {World} from './world.ts';

// All that the rooms know of the product's functions stands in this file.

/** A reading as the product asks for it. */
export type Asked = {
	readonly source: readonly string[];
	readonly signal: Sounded;
	readonly playing: Playing;
	/** Goes into the profile's reading as it is. */
	readonly extra?: Partial<MeterReading>;
};

export const mainsBand = usualMainsBand as Extract<Sounded, {kind: 'pink'}>;
export const subBand = usualSubBand as Extract<Sounded, {kind: 'pink'}>;

/** The profile that somebody in this room would have before the first reading: gear by its data sheets, nothing hidden. */
export function startProfile(world: World): Profile {
	const {mains, subs, receiver, processorLatencyMs} = world.gear;
	const profile = newProfile({
		name: world.seed,
		date: '2026-04-18',
		layout: '5.1.2',
		receiver,
		bassProcessor: 'digital',
		subs: 2,
	});
	const timing = () => (receiver === 'fine-delay' ? {delayMs: {stepped: 0}} : {distanceMetres: {stepped: 3}});
	const found: SettingsSet = {
		id: 'found',
		origin: 'found',
		masterVolumeDb: 0,
		lfeLowPassHertz: 120,
		channels: {
			...Object.fromEntries(mainIds.map(id => [id, {...timing(), trimDb: {stepped: 0}, crossoverHertz: 80}])),
			LFE1: {...timing(), trimDb: {stepped: 0}},
		},
		outputs: Object.fromEntries(
			subIds.map(id => [
				outputOf(id),
				{delayMs: {stepped: 0}, gainDb: {stepped: 0}, polarityInverted: false},
			]),
		),
	};
	return {
		...profile,
		// Cramer's and ISO's formula give 343.9 m/s here, the speed in the box.
		air: {temperatureCelsius: 21.2},
		kit: {meterWeighting: 'C', meterSigmaDb: 0.5, tapeStepMetres: 0.001},
		bassProcessor: {...profile.bassProcessor!, latencyMs: processorLatencyMs},
		channels: profile.channels.map(channel =>
			isMainId(channel.id)
				? {
						...channel,
						speaker: {
							lowLimitHertz: mains[channel.id].statedLowHertz,
							lowLimitDropDb: 3,
							box: 'closed',
						},
					}
				: channel,
		),
		subs: profile.subs!.map(sub => ({
			...sub,
			lowLimitHertz: subs[sub.id as 'sub1'].statedLowHertz,
			lowLimitDropDb: 3,
			box: 'vented',
			upperLimitHertz: Math.round(subs[sub.id as 'sub1'].upperHertz),
		})),
		settings: [found],
	};
}

const soundingIds = (source: readonly string[]): SourceId[] =>
	source.flatMap((id): SourceId[] => (id === 'LFE1' ? [...subIds] : isMainId(id) || isSubId(id) ? [id] : []));

/** What is played for a reading, where the product says only what sounds: mains into their channels, subs alone into the LFE channel. */
export function playingOf(source: readonly string[], addedDelayMs = 0, playInto?: string): Playing {
	const mains = source.filter(isMainId);
	const into = playInto && mains.length === 0 && isMainId(playInto) ? [playInto] : mains;
	return {into: into.length > 0 ? into : ['LFE1'], on: soundingIds(source), addedDelayMs};
}

/** The first round of levels: each speaker, each sub, all subs together. */
export function askedLevels(): Asked[] {
	const one = (source: readonly string[], signal: Sounded): Asked => ({
		source,
		signal,
		playing: playingOf(source),
	});
	return [
		...mainIds.map(id => one([id], mainsBand)),
		...subIds.map(id => one([id], subBand)),
		one([...subIds], subBand),
	];
}

/** A way through the blend. */
export type Way = BlendWay;

const askedOf = (step: BlendStep): Asked => {
	const source = [step.source].flat();
	const {delayMs, isTurned, subs} = step.added;
	const {source: _, seat, signal, round, ...extra} = readingOfStep(step, subIds);
	return {
		source,
		signal: step.signal as Sounded,
		playing: {
			...playingOf(source, delayMs),
			turned: isTurned,
			...(subs?.length === 1 && {movedOnly: subs[0] as SubId}),
		},
		extra,
	};
};

/** The first block that is not read to its end, as far as it is open. */
function openBlock(blocks: readonly BlendBlock[]): Asked[] {
	const block = blocks.find(({steps}) => steps.some(({isTaken}) => !isTaken));
	return (block?.steps ?? []).filter(({isTaken}) => !isTaken).map(askedOf);
}

/** Readings of a change between the subs that are left before anything else is known, and whether one was kept. */
export function askedForPair(profile: Profile): {readonly asked: Asked[]; readonly isKept: boolean} {
	const {pair} = blend(blendInputs(profile));
	const isOpen = pair?.status === 'reading' || pair?.status === 'to try';
	return {asked: isOpen ? openBlock(pair.blocks) : [], isKept: pair?.status === 'kept'};
}

const blendSteps = (profile: Profile, way: Way): readonly BlendStep[] =>
	blend(blendInputs(profile), way).blocks.flatMap(({steps}) => steps);

/** Readings of the blend that are left before anything else is known, in the product's order: one block between changes. */
export function askedForBlend(profile: Profile, way: Way): Asked[] {
	const {status, blocks} = blend(blendInputs(profile), way);
	// What is verified, or promises nothing, asks no more.
	if (status === 'kept' || status === 'put back' || status === 'stands') return [];
	return openBlock(blocks);
}

/** Levels of tones that the blend says a setting will show: the one to try, where there is one. */
export function promisedLevels(
	profile: Profile,
): ReadonlyArray<{readonly asked: Asked; readonly valueDb: number; readonly sigmaDb: number}> {
	const inputs = blendInputs(profile);
	const {tones, wanted, subs} = blend(inputs, 'tones');
	const after = blendSteps(profile, 'tones').find(({part}) => part === 'after');
	if (!wanted || !after) return [];
	const {delayMs, isTurned} = after.added;
	return tones.flatMap(({front, hertz, wantedDb}) => {
		if (!wantedDb) return [];
		const source = [front, ...subs];
		return [
			{
				asked: {
					source,
					signal: {kind: 'tone', hertz},
					playing: {...playingOf(source, delayMs), turned: isTurned},
				} as const,
				valueDb: wantedDb.value + 20 * Math.log10(weightingC(hertz)),
				sigmaDb: wantedDb.sigma,
			},
		];
	});
}

/** Everything to dial in by all readings so far, as a set to type in. */
export function decide(profile: Profile, id: string): SettingsSet {
	return toSettingsSet(solve(profile), {id});
}

/** Trims of the mains before the receiver's steps, with what the product says of them. */
export function solvedTrims(
	profile: Profile,
): ReadonlyMap<string, {readonly exactDb: number; readonly sigmaDb: number}> {
	return new Map(
		solve(profile).channels.flatMap(({id, trimDb}) =>
			trimDb ? [[id, {exactDb: trimDb.exact, sigmaDb: trimDb.sigma}] as const] : [],
		),
	);
}

/** One reading as the walk stores it. */
export function readingOf(
	asked: Asked,
	decibels: number,
	inForce: string,
	round: MeterReading['round'],
): MeterReading {
	const {source, signal, extra} = asked;
	return {
		source: source.length === 1 ? source[0]! : [...source],
		seat: 'seat1',
		decibels,
		weighting: 'C',
		signal: {...signal},
		round,
		inForce,
		...extra,
	};
}

/** What the proof asks for now: rows unread, and rows to be read once more with the meter put down anew. */
export function askedForProof(profile: Profile): {readonly asked: Asked[]; readonly again: Asked[]} {
	const made = ({source, signal}: {source: readonly string[]; signal: object}): Asked => ({
		source,
		signal: signal as Sounded,
		playing: playingOf(source),
	});
	return {
		asked: proofPlan(profile)
			.filter(({taken}) => taken === 0)
			.map(made),
		again: judgedRound(profile)
			.readings.filter(({verdict}) => (verdict as string) === 'again')
			.map(made),
	};
}

/** What the proof says in the end. */
export type Verdict = 'met' | 'missed' | 'open';

export function verdictOf(profile: Profile): {readonly verdict: Verdict} {
	const {verdict} = judgedRound(profile);
	return {verdict: verdict === 'none' ? 'open' : verdict};
}

/** The first explanation of each finding: whom it names, and whether it is called certain. */
export function namedBy(
	profile: Profile,
): ReadonlyArray<{readonly about: readonly string[]; readonly isCertain: boolean}> {
	return prove(profile).findings.flatMap(({explanations}) =>
		explanations
			.slice(0, 1)
			.flatMap(({mistakes, trust}) => mistakes.map(({about}) => ({about, isCertain: trust === 'certain'}))),
	);
}

/** A front as a recording tells it: everything that sounds, its speaker and each sub alone, on `responseGrid`. */
export type RecordedPart = {
	readonly channel: string;
	readonly all: Spectrum;
	readonly main?: Spectrum;
	readonly subs?: Readonly<Record<string, Spectrum>>;
	/** With `subs`, and with all subs together where one playing tells no more. */
	readonly crossoverHertz?: number;
	readonly allSubs?: Spectrum;
	/** In the middle of the band, dB. */
	readonly levelDb: number;
};

/** Frequencies of kept responses from 15 to 300 Hz; what lies below is taken as it is there. */
export function responseGrid(): Float64Array {
	return responseFrequencies()
		.filter(hertz => hertz <= 300)
		.map(hertz => Math.max(15, hertz));
}

/** A profile with a recording of these fronts taken into it, as the walk takes one. */
export function recordedInto(
	profile: Profile,
	parts: readonly RecordedPart[],
	inForce: string,
	number: number,
): Profile {
	const recording = `r${number}`;
	const common = {seat: 'seat1', recording, round: 'first', sha256: ''} as const;
	const points = ({re, im}: Spectrum) => keptPoints({real: re, imaginary: im}, 300)!;
	const isByLfe = parts.some(({allSubs}) => allSubs);
	const taken = {
		recordings: [
			{
				id: recording,
				file: `${recording}.wav`,
				sha256: recording,
				atSeconds: 0,
				seat: 'seat1',
				round: 'first' as const,
				inForce,
				clockPpm: 0,
				...(isByLfe && {apartBy: 'lfe' as const}),
			},
		],
		responses: parts.flatMap(
			({channel, all, main, subs, allSubs, levelDb, crossoverHertz}): RecordedResponse[] => [
				{source: channel, part: 'all', ...common, levelDb, points: points(all)},
				...(main ? [{source: channel, part: 'main' as const, ...common, points: points(main)}] : []),
				...(allSubs
					? [{source: [...subIds], part: 'subs' as const, ...common, crossoverHertz, points: points(allSubs)}]
					: []),
				...Object.entries(subs ?? {}).map(
					([sub, own]): RecordedResponse => ({
						source: sub,
						part: 'subs',
						...common,
						crossoverHertz,
						points: points(own),
					}),
				),
			],
		),
	};
	return withRound(profile, taken, profileBlend(withRound(profile, taken)));
}

/**
The fronts of one playing told apart from the subs by its LFE sweep, as `hear` does it.

@param fronts - Everything that sounds, by front.
@param lfe - What the LFE sweep brings.
@returns The same fronts where the two do not agree.
*/
export function partedByLfe(
	profile: Profile,
	inForce: string,
	fronts: readonly RecordedPart[],
	lfe: Spectrum,
): RecordedPart[] {
	const whole = ({re, im}: Spectrum) => {
		const [real, imaginary] = [re, im].map(part => {
			const padded = new Float64Array(responseFrequencies().length);
			padded.set(part);
			return padded;
		});
		return {real: real!, imaginary: imaginary!};
	};
	const set = profile.settings!.find(({id}) => id === inForce)!;
	const lowPasses = statedLowPasses(profile, set);
	const lines = [
		...fronts.map(({channel, all}) => ({channel, isSub: false, onset: {}, response: whole(all)})),
		{channel: 'LFE1', isSub: true, onset: {}, response: whole(lfe)},
	];
	const found = separateByLfe({lines} as unknown as HeardPlaying, lowPasses, 'subs');
	if (!found?.agreement.isGood) return [...fronts];
	const spectrum = ({real, imaginary}: {real: Float64Array; imaginary: Float64Array}): Spectrum => ({
		re: real,
		im: imaginary,
	});
	const told = new Set<number>();
	return fronts.map(front => {
		const crossoverHertz = lowPasses.crossoverOf(front.channel)!;
		const subs = found.groups.get('subs')!.find(group => group.crossoverHertz === crossoverHertz)!;
		const isFirst = !told.has(crossoverHertz);
		told.add(crossoverHertz);
		return {
			...front,
			main: spectrum(found.mains.get(front.channel)!),
			...(isFirst && {crossoverHertz, allSubs: spectrum(subs.mean)}),
		};
	});
}
