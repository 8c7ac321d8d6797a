import {type BoxState, channelState, delayOf, gainWithMaster} from '../../../profile/ask/boxState.ts';
import {type Line, lineOf} from '../../../profile/ask/lines.ts';
import type {Profile, Signal} from '../../../profile/types.ts';
import {fitToneSum, type SumReading, sumLevel} from '../blend/toneSum.ts';
import {groupGain, groupTurn, isChangedAlike} from './alike.ts';
import {isTurnedAgainst} from './asPlayed.ts';
import type {Predictor} from './forecast.ts';
import {cleanLevel, meterView, passed} from './ownLevels.ts';
import {isSub, type Taken} from './rounds.ts';
import {deepestDb} from './toneTogether.ts';

/** Gains of speaker and subs count as those intended within this, dB. */
const sameDb = 0.05;
/** What is left of a cancellation, as a share of both powers: 20 dB. */
const leastShare = 0.01;

/**
Forecast for one main and its subs at a tone of which only both together were read, at three or more delays or
polarities of the subs: these tell the level at every other.

@param taken - First-round readings of them together at this tone.
@returns `undefined` where the readings do not tell it, or the subs were then set otherwise to each other.
@see The sum of two phasors: power = a ± (b·cos ωτ + c·sin ωτ).
*/
export function bothPredictor(
	profile: Profile,
	key: string,
	taken: readonly Taken[],
	intended: BoxState,
): Predictor | undefined {
	const {atoms, seat, weighting, signal} = taken.at(-1)!;
	const subLines = atoms.filter(atom => isSub(profile, atom)).map(atom => lineOf(profile, atom));
	const mains = atoms.filter(atom => !isSub(profile, atom));
	if (signal.kind !== 'tone' || mains.length !== 1 || subLines.length === 0) return undefined;
	const {hertz} = signal;
	const main = mains[0]!;
	const mainLine = lineOf(profile, main);
	const laterMs = (state: BoxState) => delayOf(state, subLines[0]!) - delayOf(state, mainLine);
	const balanceDb = (state: BoxState) => groupGain(state, subLines) - gainWithMaster(state, mainLine);
	const isUsable = ({state}: Taken) =>
		isChangedAlike(subLines, state, intended) &&
		Math.abs(balanceDb(state) - balanceDb(intended)) < sameDb &&
		channelState(state, main).crossoverHertz === channelState(intended, main).crossoverHertz;
	const readings = taken.filter(isUsable).flatMap((one): SumReading[] => {
		const clean = cleanLevel(profile, one);
		if (!clean) return [];
		return [
			{
				...clean,
				levelDb: clean.levelDb - gainWithMaster(one.state, mainLine),
				laterMs: laterMs(one.state),
				inverted: isTurnedAgainst(one.state, subLines[0]!, mainLine),
				index: one.looks.at(-1)!.order,
			},
		];
	});
	const sum = fitToneSum(hertz, readings);
	if (!sum) return undefined;

	const isInverted = isTurnedAgainst(intended, subLines[0]!, mainLine);
	const held = Math.min(1, sum.a / Math.hypot(sum.b, sum.c));
	const angle = (2 * Math.PI * hertz * laterMs(intended)) / 1000;
	const turnOf = turnFrom(profile, main, mainLine, subLines, signal, intended);
	/** With settings that differ from those intended: half of the power counts as the main's, half as the subs'. */
	const levelDb = (state: BoxState) => {
		const {main: gm, subs: gs, phase} = turnOf(state);
		const cross = sum.b * Math.cos(angle - phase) + sum.c * Math.sin(angle - phase);
		const power = (sum.a / 2) * (gm * gm + gs * gs) + gm * gs * held * (isInverted ? -cross : cross);
		return 10 * Math.log10(Math.max(power, leastShare * sum.a)) + gainWithMaster(intended, mainLine);
	};
	const shown = meterView(profile, {seat, weighting, signal});
	const apartDb = 10 * Math.log10(sum.a) + gainWithMaster(intended, mainLine);
	return {
		key,
		atoms,
		seat,
		weighting,
		signal,
		shows: 'blend',
		floorDb: shown(apartDb - deepestDb),
		depthDb: apartDb - levelDb(intended),
		sigmaDb: sumLevel(sum, laterMs(intended), isInverted).sigma,
		level: state => shown(levelDb(state)),
	};
}

/** What other settings do to the main and to the subs as one: factors on their pressures, and the subs' phase against it. */
function turnFrom(
	profile: Profile,
	main: string,
	mainLine: Line,
	subLines: readonly Line[],
	signal: Extract<Signal, {kind: 'tone'}>,
	intended: BoxState,
) {
	const factor = (db: number) => 10 ** (db / 20);
	const none = {levelDb: 0, phase: 0};
	const then = {
		high: passed(profile, intended, main, signal, 'high'),
		low: passed(profile, intended, main, signal, 'low'),
	};
	// Asked for with every mistake that is tried; most leave the crossover alone, and there are only so many choices.
	const known = new Map<unknown, {readonly high: typeof none; readonly low: typeof none}>([
		[channelState(intended, main).crossoverHertz, {high: none, low: none}],
	]);
	const passOf = (state: BoxState) => {
		const {crossoverHertz} = channelState(state, main);
		const side = (which: 'high' | 'low') => {
			const now = passed(profile, state, main, signal, which);
			return {levelDb: now.levelDb - then[which].levelDb, phase: now.phase - then[which].phase};
		};
		const made = known.get(crossoverHertz) ?? {high: side('high'), low: side('low')};
		known.set(crossoverHertz, made);
		return made;
	};
	return (state: BoxState) => {
		const ofMain = groupTurn([mainLine], intended, state, signal.hertz);
		const ofSubs = groupTurn(subLines, intended, state, signal.hertz);
		const {high, low} = passOf(state);
		return {
			main: factor(ofMain.levelDb + high.levelDb),
			subs: factor(ofSubs.levelDb + low.levelDb),
			phase: ofSubs.phase + low.phase - ofMain.phase - high.phase,
		};
	};
}
