import {expectationOf} from './expectation.ts';
import {type Fit, fitFrom, inseparableFrom, type Tested, testedOf} from './fit.ts';
import type {SurveyNetwork} from './network.ts';
import {type Observation, offsetsTouch} from './observations.ts';
import {stateCovariance} from './placed.ts';
import {leastRedundancy} from './reliability.ts';
import {joinRepeats} from './repeats.ts';
import {outsideBy} from './roomSize.ts';
import {fitWithout, type Removed, removedFrom, type Snooped, type Snooper, snoop} from './snooping.ts';
import {nominalDirection} from './starts.ts';
import type {Vector} from './vectors.ts';

/**
More wrong readings than this, or than a third of all: the readings are not of one room, and taking out more proves
nothing.
*/
const mostRemoved = 8;
/** With more wrong readings than this, one explanation proves as little as another. */
const mostCompared = 4;
/** Readings that are tried as the first to be taken out; a point has hardly more that differ in kind. */
const mostTried = 16;
/** Half a sum of squares within which another explanation fits as well. */
const alikeCost = 3;
/** What a usual slip, or a speaker on the side where it belongs, is worth in the same measure. */
const slipWorth = 3;
/** A single suspect that a usual slip explains this well, and that stands alone, needs no other explanation. */
const explained = 0.5;

/** Beyond this a point is outside the room, not just held badly against a wall, metres. */
const outsideMetres = 0.05;

/**
Things that an explanation puts outside the room, or speakers on the side where they do not belong. Near the middle line
there are no sides.
*/
function misplaced({profile, points}: SurveyNetwork, {settled}: Fit): number {
	const {state, components} = settled.solved;
	return points.filter(({id}, index) => {
		const at: Vector = [state[index * 3]!, state[index * 3 + 1]!, state[index * 3 + 2]!];
		if (components[index]! >= 0 && outsideBy(settled.size, at) > outsideMetres) return true;
		const azimuth = nominalDirection(profile, id)?.azimuthDegrees ?? 0;
		if (Math.abs(azimuth) < 15 || Math.abs(azimuth) > 165 || components[index]! < 0) return false;
		const aside = at[0] - state[0]!;
		return Math.abs(aside) > 0.3 && Math.sign(aside) === Math.sign(azimuth);
	}).length;
}

type Scored = Snooped & {
	/** How far usual slips explain what was taken out. */
	readonly slips: number;
	/** What fit and places speak against it, half a sum of squares. */
	readonly strain: number;
	readonly score: number;
};

/** Lower is better: the fit, a price for each reading taken out, less what usual slips explain. */
function scored({network, plausibility}: Snooper, explanation: Snooped): Scored {
	const {fit, removed} = explanation;
	const {solved} = fit.settled;
	const covariance = stateCovariance(network, solved);
	const slips = removed.reduce((sum, {observation}) => {
		const {metres, sigmaMetres} = expectationOf(observation, solved.state, covariance);
		const sigma = Math.hypot(sigmaMetres, observation.sigmaMetres);
		return sum + plausibility(observation, metres, sigma, fit.settled);
	}, 0);
	const price = (removed.length * fit.critical ** 2) / 2;
	const strain = fit.cost + slipWorth * misplaced(network, fit);
	return {...explanation, slips, strain, score: strain + price - slipWorth * slips};
}

const readingsOf = (removed: readonly Removed[]) => removed.map(({observation}) => observation.reading);

/** Readings to try as the wrong one: those that share a thing with what was accused, the worst first. */
function readingsToTry(whole: Fit, accused: readonly Observation[]): Tested[] {
	return testedOf(whole)
		.filter(
			({observation, test}) =>
				test.redundancy >= leastRedundancy &&
				(Math.abs(test.standardised) > whole.critical ||
					accused.some(one => offsetsTouch(one, observation) || observation.kind === 'planes')),
		)
		.sort((a, b) => Math.abs(b.test.standardised) - Math.abs(a.test.standardised))
		.filter(({test}, index, all) => all.findIndex(other => other.test.row === test.row) === index)
		.slice(0, mostTried);
}

/** Names in one explanation what others that fit as well, with as few readings, take out instead. */
function withAlternatives(best: Scored, all: readonly Scored[]): Snooped {
	const others = all.filter(
		one =>
			one !== best &&
			!one.isCutShort &&
			one.removed.length === best.removed.length &&
			one.strain <= best.strain + alikeCost,
	);
	const removed = best.removed.map((one): Removed => {
		const rest = readingsOf(best.removed.filter(other => other !== one));
		const instead = others.flatMap(other => {
			const theirs = readingsOf(other.removed);
			if (theirs.includes(one.observation.reading) || !rest.every(reading => theirs.includes(reading)))
				return [];
			return theirs.filter(reading => !rest.includes(reading));
		});
		return {...one, alternatives: [...new Set([...instead, ...one.alternatives])]};
	});
	return {...best, removed};
}

/**
The fewest wrong readings that explain all.

Snooping takes the worst reading first, which is a sound one where a wrong one bends the fit, as few others control it
or it pulls a point over to its mirror side. So, once something is accused, each reading near it is taken out first in
turn and snooping goes on from there; of what is found the explanation with the fewest readings that fits and has usual
slips for causes is taken, and what fits as well is named beside it.

@returns Nothing removed where nothing fails its test.
*/
export function fewestWrong(snooper: Snooper, observations: readonly Observation[]): Snooped {
	const joined = joinRepeats(observations);
	const whole = fitFrom(snooper.network, joined, [() => snooper.startFor(joined)]);
	const limit = Math.min(mostRemoved, Math.max(1, Math.floor(observations.length / 3)));
	const first = snoop(snooper, whole, limit);
	if (first.removed.length === 0 || first.removed.length > mostCompared) return first;
	const own = scored(snooper, first);
	const stands =
		first.removed.length === 1 && first.removed[0]!.alternatives.length === 0 && own.slips > explained;
	if (stands && !first.isCutShort) return first;
	const accused = first.removed.map(({observation}) => observation);
	const tested = testedOf(whole);
	const failing = tested.filter(({test}) => Math.abs(test.standardised) > whole.critical);
	const found = [own];
	for (const candidate of readingsToTry(whole, accused)) {
		if (accused.length === 1 && candidate.observation === accused[0]) continue;
		const fewest = Math.min(...found.map(({removed}) => removed.length));
		const fit = fitWithout(snooper, whole, candidate, [first.fit.settled.solved.state]);
		const removed = removedFrom(candidate, inseparableFrom(whole, candidate, failing));
		const next = snoop(snooper, fit, fewest, [removed]);
		if (!next.isCutShort && next.removed.length > 0) found.push(scored(snooper, next));
	}

	const complete = found.filter(({isCutShort}) => !isCutShort);
	const best = (complete.length > 0 ? complete : found).reduce((a, b) => (b.score < a.score - 1e-9 ? b : a));
	return withAlternatives(best, found);
}
