import {bassManagement} from '../../../profile/ask/bassManagement.ts';
import {type BoxState, channelState, gainWithMaster} from '../../../profile/ask/boxState.ts';
import {type Line, lineOf} from '../../../profile/ask/lines.ts';
import type {Profile, Signal} from '../../../profile/types.ts';
import {withoutBackground} from '../../../science/acoustics/background.ts';
import {weightingOfSpectrum} from '../../../science/acoustics/band.ts';
import {filterResponse} from '../../../science/acoustics/filters/response.ts';
import {shapedFilter} from '../../../science/acoustics/filters/shape.ts';
import {backgroundAt} from '../levels/backgroundAt.ts';
import {isSub, type Taken} from './rounds.ts';

/** Level of one source at a seat with all settings at zero, unweighted and without background, dB. */
export type OwnLevel = {readonly levelDb: number; readonly sigmaDb: number};

/** What one half of bass management does to a channel's tone: level, dB ≤ 0, and phase, radians. */
type Passed = {readonly levelDb: number; readonly phase: number};

/**
What bass management does to a tone of one channel: its high-pass on the way to the speaker, its low-pass on the way to
the subs. Nothing to noise above it, and nothing at full range.
*/
export function passed(
	profile: Profile,
	state: BoxState,
	channel: string,
	signal: Signal,
	pass: 'high' | 'low',
): Passed {
	const {crossoverHertz} = channelState(state, channel);
	if (signal.kind !== 'tone' || typeof crossoverHertz !== 'number') return {levelDb: 0, phase: 0};
	const {highPass, lowPass} = bassManagement(profile.receiver?.crossover);
	const filter = shapedFilter(pass, pass === 'high' ? highPass : lowPass, crossoverHertz);
	const {real, imaginary} = filterResponse(filter, Float64Array.of(signal.hertz));
	return {
		levelDb: 20 * Math.log10(Math.hypot(real[0]!, imaginary[0]!)),
		phase: Math.atan2(imaginary[0]!, real[0]!),
	};
}

/** What the settings do to the level of one source, dB. */
export function settingsDb(
	profile: Profile,
	state: BoxState,
	atom: string,
	line: Line,
	signal: Signal,
): number {
	const db = gainWithMaster(state, line) + (state.besides?.get(atom) ?? 0);
	const isHighPassed = signal.kind === 'tone' && !isSub(profile, atom);
	return isHighPassed ? db + passed(profile, state, atom, signal, 'high').levelDb : db;
}

/** A reading without background and weighting, dB; undefined where the background drowns it. */
export function cleanLevel(profile: Profile, taken: Taken): OwnLevel | undefined {
	const background = backgroundAt(profile, taken.seat, taken.weighting);
	const weightingDb = weightingOfSpectrum(taken.weighting, taken.signal);
	if (background === undefined) return {levelDb: taken.levelDb - weightingDb, sigmaDb: taken.sigmaDb};
	const {verdict, levelDb, sigmaFactor} = withoutBackground(taken.levelDb, background);
	if (verdict === 'refused') return undefined;
	return {levelDb: levelDb - weightingDb, sigmaDb: taken.sigmaDb * sigmaFactor};
}

/** How the meter will show levels at a seat: weighted, with the background on top. Takes and gives dB. */
export function meterView(
	profile: Profile,
	at: Pick<Taken, 'seat' | 'weighting' | 'signal'>,
): (levelDb: number) => number {
	const weightingDb = weightingOfSpectrum(at.weighting, at.signal);
	const background = backgroundAt(profile, at.seat, at.weighting);
	return levelDb => {
		const weighted = levelDb + weightingDb;
		// Left out on the way back where it was left out on the way in, so that the two cancel.
		if (background === undefined || weighted - background > 15) return weighted;
		return 10 * Math.log10(10 ** (weighted / 10) + 10 ** (background / 10));
	};
}

/** Weighted mean of levels, by their uncertainties. */
export function meanOwnLevel(levels: readonly OwnLevel[]): OwnLevel | undefined {
	if (levels.length === 0) return undefined;
	let weights = 0;
	let sum = 0;
	for (const {levelDb, sigmaDb} of levels) {
		weights += 1 / sigmaDb ** 2;
		sum += levelDb / sigmaDb ** 2;
	}

	return {levelDb: sum / weights, sigmaDb: 1 / Math.sqrt(weights)};
}

/** Own level of one source from everything that the first round read of it at a seat with one signal. */
export function ownLevel(profile: Profile, taken: readonly Taken[], atom: string): OwnLevel | undefined {
	const line = lineOf(profile, atom);
	return meanOwnLevel(
		taken.flatMap(one => {
			const clean = cleanLevel(profile, one);
			if (!clean) return [];
			return [{...clean, levelDb: clean.levelDb - settingsDb(profile, one.state, atom, line, one.signal)}];
		}),
	);
}
