import {type MirrorDecision, mirrorDecisions} from './mirrors.ts';
import type {SurveyNetwork} from './network.ts';
import type {Observation} from './observations.ts';
import {looseness} from './placed.ts';
import type {RoomSize} from './roomSize.ts';
import {brokenCeilingOf, slopeOf} from './roomSize.ts';
import {type SolvedNetwork, solveNetwork} from './solveNetwork.ts';

export type Settled = {
	readonly solved: SolvedNetwork;
	readonly loose: readonly number[];
	readonly size: RoomSize;
	readonly mirrors: readonly MirrorDecision[];
};

/** While blunders pull things about, images tell nothing; half a sum of squares for each reading. */
const contradictedCost = 50;
/** A dimension that the network knows worse than this is as good as unknown, metres. */
const usableSigmaMetres = 0.3;

/** Standard uncertainty of width, length and height; 0 where exact, undefined where no reading tells them. */
export function dimensionSigmas({points, exactDimensions}: SurveyNetwork, {columnOf, rows}: SolvedNetwork) {
	return [0, 1, 2].map(axis => {
		const offset = points.length * 3 + axis;
		if (exactDimensions.has(offset)) return 0;
		const column = columnOf[offset]!;
		if (column < 0) return undefined;
		const sigma = Math.sqrt(rows.covariance[column * rows.unknowns + column]!);
		return sigma <= usableSigmaMetres ? sigma : undefined;
	});
}

function settledSize(network: SurveyNetwork, solved: SolvedNetwork): RoomSize {
	// A network that the walls do not hold has no room around it, whatever its dimensions are taken to be.
	const isHeld = solved.conventions.length === 0;
	const [width, length, height] = dimensionSigmas(network, solved).map((sigma, axis) =>
		sigma === undefined || (sigma > 0 && !isHeld)
			? undefined
			: solved.state[network.points.length * 3 + axis],
	);
	// Under several heights the highest bounds what can be.
	const broken = brokenCeilingOf(network.profile.room);
	const ceiling =
		slopeOf(network.profile.room) ??
		(broken
			? {heightMetres: Math.max(...broken.places.map(({heightMetres}) => heightMetres))}
			: height === undefined
				? undefined
				: {heightMetres: height});
	return {
		...(width !== undefined && {widthMetres: width}),
		...(length !== undefined && {lengthMetres: length}),
		...(ceiling && {ceiling}),
	};
}

/** Adjusts, decides between mirror images, and adjusts again where another image was taken. */
export function settle(
	network: SurveyNetwork,
	observations: readonly Observation[],
	start: Float64Array,
): Settled {
	let solved = solveNetwork(network, observations, start);
	let loose = looseness(network, solved);
	const isContradicted = solved.cost > contradictedCost * observations.length;
	const mirrors = isContradicted
		? []
		: mirrorDecisions(network, observations, solved, settledSize(network, solved), loose);
	if (mirrors.some(({isSwap}) => isSwap)) {
		solved = solveNetwork(network, observations, solved.state);
		loose = looseness(network, solved);
	}

	return {solved, loose, size: settledSize(network, solved), mirrors};
}
