import {isComputedFrom} from '../../profile/ask/digest.ts';
import {decidedSettings} from '../../profile/ask/settings.ts';
import type {Profile, SettingsSet} from '../../profile/types.ts';
import type {Solution} from '../calibration/result.ts';
import {type LevelledPair, levelledPair, referencePair} from '../hearing/roundPairs.ts';
import {type PlanCarried, planCarried} from '../placement/againstPlan.ts';
import {type PlanPoints, planPoints} from '../placement/planPoints.ts';
import type {NetworkResult} from '../survey/result.ts';
import type {WiringResult} from '../wiring/result.ts';
import {wiring} from '../wiring/wiring.ts';

/** What is known of where things stand: room frame, metres; and distances to the reference seat. */
export type Standing = {
	readonly positions: ReadonlyMap<string, {readonly x: number; readonly y: number; readonly z: number}>;
	readonly widthMetres?: number;
	readonly lengthMetres?: number;
	readonly seatDistances: ReadonlyMap<string, number>;
};

/** Everything that the page for the cabinet door is made from. */
export type SheetData = {
	readonly profile: Profile;
	readonly solution: Solution;
	/** The kept set to print; absent where none was kept and the fresh solution is printed. */
	readonly set?: SettingsSet;
	/** Whether the kept set was computed from other readings than the profile holds now. */
	readonly isStale: boolean;
	readonly wiring: WiringResult;
	readonly standing: Standing;
	/** What was planned and how far it is carried out; absent where nothing was chosen. */
	readonly carried?: PlanCarried;
	/** Absent where the tape does not tie things to the walls. */
	readonly plan?: PlanPoints;
	/** What was recorded at the reference seat, before and after; absent where nothing was. */
	readonly response?: LevelledPair;
};

/** Sixths of an octave show what the room does. */
const smoothingPerOctave = 6;

/**
Where things stand in the room, as far as the tape ties them to the walls; nothing that only a convention holds.

@param network - The adjusted tape network.
*/
export function standingOf(network: NetworkResult, solution: Solution): Standing {
	const isTied = network.conventions.length === 0;
	const known = isTied
		? network.points.filter(({status}) => status === 'determined' || status === 'weak')
		: [];
	const distances = [...solution.channels, ...solution.subs].flatMap(({id, distance}) =>
		distance ? [[id as string, distance.metres] as const] : [],
	);
	return {
		positions: new Map(known.map(({id, at: [x, y, z]}) => [id, {x, y, z}])),
		widthMetres: network.room.widthMetres,
		lengthMetres: network.room.lengthMetres,
		seatDistances: new Map(distances),
	};
}

/** What the readings give: where things stand, and what to dial in. */
export type ReadingsGive = {readonly network: NetworkResult; readonly solution: Solution};

/**
Gathers what goes on the page for the cabinet door.

@param set - The set of settings to print; the newest decided one where not given.
*/
export function sheetData(
	profile: Profile,
	{network, solution}: ReadingsGive,
	set: SettingsSet | undefined = decidedSettings(profile),
): SheetData {
	const standing = standingOf(network, solution);
	const recorded = referencePair(profile);
	const plan = standing.positions.size > 0 ? planPoints(network) : undefined;
	return {
		profile,
		solution,
		set,
		isStale: !isComputedFrom(profile, set?.inputsHash),
		wiring: wiring(profile, standing.positions),
		standing,
		...(recorded && {response: levelledPair(recorded, smoothingPerOctave)}),
		carried: planCarried(profile, network),
		plan: plan && {...plan, points: plan.points.filter(({id}) => standing.positions.has(id))},
	};
}
