import {chiSquareUpperTail} from '../../science/numeric/chiSquare.ts';
import {assumedPoints} from './assumed.ts';
import {beyondRoom} from './beyondRoom.ts';
import {likelyCauses} from './causes.ts';
import {heldOf, worstHiddenMetres} from './checked.ts';
import {expectationOf} from './expectation.ts';
import {fewestWrong} from './fewest.ts';
import {surveyFindings} from './findings.ts';
import type {Fit} from './fit.ts';
import {missingTape} from './missing.ts';
import {type SurveyNetwork, surveyNetwork} from './network.ts';
import {isUsable, type Observation, observationOf, type Unusable} from './observations.ts';
import {otherEnds} from './otherEnds.ts';
import {stateCovariance} from './placed.ts';
import {placedPoints} from './placedPoints.ts';
import type {SurveyInput} from './points.ts';
import {adjustedReadings} from './readings.ts';
import type {NetworkResult, Suspect, Undetermined} from './result.ts';
import {dimensionSigmas, type Settled} from './settle.ts';
import type {Plausibility, Removed} from './snooping.ts';
import {startState} from './starts.ts';

function undeterminedOf(
	network: SurveyNetwork,
	{points, covariance}: Pick<NetworkResult, 'points' | 'covariance'>,
	state: Float64Array,
): Undetermined[] {
	const helpers = points.filter(({status}) => status === 'determined').map(({id}) => id);
	return points.flatMap(({id, status, assumedBy}, index) => {
		// Where nobody held a tape to the screen, the speakers may tell what is ahead: that is no gap.
		if (status === 'determined' || (status === 'unmeasured' && id === 'screen')) return [];
		const missing = missingTape(network, state, covariance, index, helpers);
		return [{id, status, ...(assumedBy && {assumedBy}), missing}];
	});
}

/** Causes are looked for in as many wrong readings; a file with more is of another room. */
const mostExplained = 50;

function suspectsOf(network: SurveyNetwork, {solved, loose}: Settled, out: readonly Removed[]): Suspect[] {
	const covariance = stateCovariance(network, solved);
	return out.map(({observation, alternatives}, place): Suspect => {
		const expected = expectationOf(observation, solved.state, covariance);
		const {reading: index, metres, sigmaMetres} = observation;
		const sigma = Math.hypot(sigmaMetres, expected.sigmaMetres);
		const causes = () =>
			likelyCauses(
				network.profile.kit,
				network.profile.tape![index]!,
				expected.metres,
				sigma,
				otherEnds(network, observation, solved, loose),
			);
		return {
			index,
			expectedMetres: expected.metres,
			expectedSigmaMetres: expected.sigmaMetres,
			errorMetres: metres - expected.metres,
			standardisedResidual: Math.abs(metres - expected.metres) / sigma,
			causes: place < mostExplained ? causes() : [],
			alternatives,
		};
	});
}

function globalTestOf({cost, tests}: Fit): Pick<NetworkResult, 'globalTest'> {
	let degreesOfFreedom = 0;
	for (const row of tests) for (const {redundancy} of row) degreesOfFreedom += redundancy;
	if (degreesOfFreedom <= 0.5) return {};
	const sumOfSquares = 2 * cost;
	return {
		globalTest: {
			sumOfSquares,
			degreesOfFreedom,
			probability: chiSquareUpperTail(sumOfSquares, degreesOfFreedom),
		},
	};
}

/**
Adjusts all tape readings of a profile together: places of seats, speakers, subs and screen, the room's size, how well
each is known and whether it is checked, which readings cannot be right, and what is still to be measured.

Seats are points at ear height, speakers at their acoustic centre. Readings are independent and normal with the sigma
of `tapeSigmaMetres`; repeats enter as their mean and are tested singly. Room dimensions that the profile states are
exact, others unknown. Where no wall holds the network, conventions do: the reference seat, the direction of the screen,
the level. What such a convention or a usual side decided is not determined.

@param profile - Any valid profile, with no reading at all too.
@returns Never throws for a valid profile; whatever is wrong is a remark.
@see Ghilani and Wolf, Adjustment Computations, chapters 14 (trilateration), 19 (error ellipses), 21 (blunders).
*/
export function adjustNetwork(profile: SurveyInput): NetworkResult {
	const network = surveyNetwork(profile);
	const tape = profile.tape ?? [];
	const made = tape.map((reading, index) =>
		reading.setAside ? undefined : observationOf(network.ends, reading, index),
	);
	const unusable = made.filter((one): one is Unusable => one !== undefined && !isUsable(one));
	const observations = made.filter((one): one is Observation => one !== undefined && isUsable(one));
	const beyond = new Set(observations.filter(one => beyondRoom(profile, one)));
	const plausibility: Plausibility = (o, expected, sigma, settled) => {
		const others = settled ? otherEnds(network, o, settled.solved, settled.loose) : [];
		const causes = likelyCauses(profile.kit, tape[o.reading]!, expected, sigma, others);
		return causes.length > 0 ? Math.exp(-(causes[0]!.misfit ** 2) / 2) : 0;
	};
	const explanation = fewestWrong(
		{
			network,
			startFor: used =>
				startState(
					profile,
					network.points,
					used.map(({observation}) => observation),
				),
			plausibility,
		},
		beyond.size > 0 ? observations.filter(one => !beyond.has(one)) : observations,
	);
	const {fit, removed} = explanation;
	const {solved, size} = fit.settled;
	const out: Removed[] = [
		...[...beyond].map(observation => ({
			observation,
			standardisedResidual: Number.POSITIVE_INFINITY,
			alternatives: [],
		})),
		...removed,
	];
	const suspects = suspectsOf(network, fit.settled, out);
	const [width, length, height] = dimensionSigmas(network, solved);
	const sure = stateCovariance(network, solved);
	const assumed = assumedPoints(network, fit.settled, sure);
	const held = fit.joined.map(heldOf);
	const points = placedPoints(network, solved, assumed, point =>
		worstHiddenMetres(point, held, solved.state, sure, fit.critical),
	);
	const {covariance} = assumed;
	const result = {
		points,
		room: size,
		roomSigmaMetres: {
			...(width !== undefined && {width}),
			...(length !== undefined && {length}),
			...(height !== undefined && {height}),
		},
		readings: adjustedReadings(tape, made, fit, suspects),
		suspects,
		undetermined: undeterminedOf(network, {points, covariance}, solved.state),
		conventions: solved.conventions.map(({fact}) => fact),
		...globalTestOf(fit),
		covariance,
	};
	return {...result, remarks: surveyFindings(profile, result, unusable, explanation)};
}
