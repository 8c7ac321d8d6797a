import type {Profile} from '../../profile/types.ts';
import {chiSquareUpperTail} from '../../science/numeric/chiSquare.ts';
import {beyondRoom} from './beyondRoom.ts';
import {likelyCauses} from './causes.ts';
import {expectationOf} from './expectation.ts';
import {missingReadings} from './missing.ts';
import {networkRemarks} from './networkRemarks.ts';
import {isUsable, type Observation, observationOf, type Unusable} from './observations.ts';
import {otherEnds} from './otherEnds.ts';
import {placedPoints, stateCovariance} from './placed.ts';
import {pointsOf} from './points.ts';
import {adjustedReadings} from './readings.ts';
import type {NetworkResult, Suspect, Undetermined} from './result.ts';
import {withRivals} from './rivals.ts';
import {dimensionSigmas} from './settle.ts';
import {type Plausibility, type Removed, snoop} from './snooping.ts';
import {exactDimensionsOf, type Network} from './solveNetwork.ts';
import {startState} from './starts.ts';

function undeterminedOf(
	{profile, points}: Network,
	result: Pick<NetworkResult, 'points' | 'covariance'>,
	state: Float64Array,
): Undetermined[] {
	const helpers = result.points.filter(({status}) => status === 'determined').map(({id}) => id);
	return result.points.flatMap(({id, status}, index) => {
		// Where nobody held a tape to the screen, the speakers may tell what is ahead: that is no gap.
		if (status === 'determined' || (status === 'unmeasured' && id === 'screen')) return [];
		return [
			{id, status, missing: missingReadings(profile, points, state, result.covariance, index, helpers)},
		];
	});
}

/** Several parts of one report ask for the same profile; it is held only as long as the profile itself. */
const remembered = new WeakMap<Profile, NetworkResult>();

/** Causes are looked for in as many wrong readings; a file with more is of another room. */
const mostExplained = 50;

/**
Adjusts all tape readings of a profile together: places of seats, speakers, subs and screen, the room's size, how well
each is known, which readings cannot be right, and what is still to be measured.

Seats are points at ear height, speakers at their acoustic centre. Readings are independent and normal with the sigma
of `tapeSigmaMetres`. Room dimensions that the profile states are exact, others unknown. Where no wall holds the
network, conventions do: the reference seat, the direction of the screen, the level.

@param profile - Any valid profile, with no reading at all too.
@returns Never throws for a valid profile; whatever is wrong is a remark.
@see Ghilani and Wolf, Adjustment Computations, chapters 14 (trilateration), 19 (error ellipses), 21 (blunders).
*/
export function adjustNetwork(profile: Profile): NetworkResult {
	const known = remembered.get(profile) ?? adjusted(profile);
	remembered.set(profile, known);
	return known;
}

function adjusted(profile: Profile): NetworkResult {
	const points = pointsOf(profile);
	const network: Network = {profile, points, exactDimensions: exactDimensionsOf(profile, points.length)};
	const tape = profile.tape ?? [];
	const made = tape.map((reading, index) =>
		reading.setAside ? undefined : observationOf(profile, points, reading, index),
	);
	const unusable = made.filter((one): one is Unusable => one !== undefined && !isUsable(one));
	const observations = made.filter((one): one is Observation => one !== undefined && isUsable(one));
	const isBeyond = (o: Observation) => beyondRoom(profile, o);
	const inside = observations.filter(o => !isBeyond(o));
	const startFor = (used: readonly Observation[]) => startState(profile, points, used);
	const plausibility: Plausibility = (o, expected, sigma, settled) => {
		const others = settled ? otherEnds(network, o, settled.solved, settled.loose) : [];
		const causes = likelyCauses(profile, tape[o.reading]!, expected, sigma, others);
		return causes.length > 0 ? Math.exp(-(causes[0]!.misfit ** 2) / 2) : 0;
	};
	const snooped = withRivals(network, snoop(network, inside, startFor, plausibility), startFor, plausibility);
	const {solved, loose, size} = snooped.settled;
	const covariance = stateCovariance(network, solved);
	const out: Removed[] = [
		...observations
			.filter(isBeyond)
			.map(observation => ({observation, standardisedResidual: Number.POSITIVE_INFINITY, alternatives: []})),
		...snooped.removed,
	];
	const suspects = out.map(({observation, alternatives}, place): Suspect => {
		const expected = expectationOf(observation, solved.state, covariance);
		const {reading: index, metres, sigmaMetres} = observation;
		const sigma = Math.hypot(sigmaMetres, expected.sigmaMetres);
		const isExplained = place < mostExplained;
		return {
			index,
			expectedMetres: expected.metres,
			expectedSigmaMetres: expected.sigmaMetres,
			errorMetres: metres - expected.metres,
			standardisedResidual: Math.abs(metres - expected.metres) / sigma,
			causes: isExplained
				? likelyCauses(
						profile,
						tape[index]!,
						expected.metres,
						sigma,
						otherEnds(network, observation, solved, loose),
					)
				: [],
			alternatives,
		};
	});
	const readings = adjustedReadings(tape, made, snooped, suspects);
	const [width, length, height] = dimensionSigmas(network, solved);
	const degreesOfFreedom = snooped.redundancy.reduce((sum, r) => sum + r, 0);
	let sumOfSquares = 0;
	for (let row = 0; row < snooped.used.length; row++) sumOfSquares += solved.rows.residuals[row]! ** 2;
	const placed = placedPoints(network, solved, covariance, loose);
	const result = {
		points: placed,
		room: size,
		roomSigmaMetres: {
			...(width !== undefined && {width}),
			...(length !== undefined && {length}),
			...(height !== undefined && {height}),
		},
		readings,
		suspects,
		undetermined: undeterminedOf(network, {points: placed, covariance}, solved.state),
		conventions: solved.conventions.map(({what}) => what),
		...(degreesOfFreedom > 0.5 && {
			globalTest: {
				sumOfSquares,
				degreesOfFreedom,
				probability: chiSquareUpperTail(sumOfSquares, degreesOfFreedom),
			},
		}),
		covariance,
	};
	return {...result, remarks: networkRemarks(profile, result, unusable, snooped)};
}
