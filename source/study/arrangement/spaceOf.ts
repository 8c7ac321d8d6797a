import {processorOf, subsOf} from '../../profile/ask/subs.ts';
import {finding} from '../../profile/finding.ts';
import type {Profile} from '../../profile/types.ts';
import type {RoomInputs} from '../room/roomStudy.ts';
import {isInside} from '../room/shape.ts';
import {add, subtract, type Vector} from '../survey/vectors.ts';
import {assumedPlaces} from './assumed.ts';
import type {ArrangementFinding} from './facts.ts';
import {featureFaults, keepOuts, standsOn} from './keepOut.ts';
import type {SearchSpace} from './searchSpace.ts';
import {subPlaces, subSize} from './subPlaces.ts';
import type {SettingSteps} from './subSettings.ts';

/** Distance between neighbouring places for a sub along a wall, and how far seats may be moved in which steps, metres. */
const searchSteps = {placeMetres: 0.4, rowMetres: 0.1, rowMostMetres: 0.9, seatToWallMetres: 0.4} as const;

/** What the arrangement of a profile may become, and what was assumed for it. */
export type ArrangementSpace = SearchSpace & {readonly findings: readonly ArrangementFinding[]};

/**
What a search over a profile's arrangement may change: subs that are not fixed, the seats together along the room, delay
and gain where a box gives each sub its own. What was never taped stands where it usually does, and that is said.

@param seatMetres - From the screen wall to the reference seat, where the seats were not taped.
*/
export function arrangementSpace(
	profile: Profile,
	inputs: RoomInputs,
	seatMetres?: number,
): ArrangementSpace {
	const {shape, decay} = inputs;
	const assumed = assumedPlaces(profile, shape, seatMetres);
	const wanted = subsOf(profile);
	const isPlanned = (id: string) => profile.planned?.places.some(place => place.id === id) ?? false;
	const tapedSeat = (id: string) => standsAt(profile, inputs.seats, id);
	// Seats that were not taped keep their place beside the reference seat, where that was.
	const [first] = assumed.seats;
	const tapedFirst = first && tapedSeat(first.id);
	const aside = tapedFirst ? subtract(tapedFirst, first.at) : ([0, 0, 0] as const);
	const seats = assumed.seats.map(seat => ({...seat, at: tapedSeat(seat.id) ?? add(seat.at, aside)}));
	const subs = wanted.flatMap(sub => {
		const at = standsAt(profile, inputs.subs, sub.id) ?? assumed.subs.find(({id}) => id === sub.id)?.at;
		return at ? [{id: sub.id, at, isFixed: sub.fixed === true}] : [];
	});
	const features = profile.room.features ?? [];
	const keepOut = keepOuts(features, shape);
	const places = subPlaces(
		shape,
		seats.map(({at}) => at),
		keepOut,
		searchSteps.placeMetres,
	);
	const what = [
		...(seats.every(({id}) => isPlanned(id) || tapedSeat(id)) ? [] : (['seats'] as const)),
		...(subs.every(({id}) => isPlanned(id) || inputs.subs.some(one => one.id === id))
			? []
			: (['subs'] as const)),
	];
	const findings: ArrangementFinding[] = featureFaults(features, shape).map(fault =>
		finding('problem', 'arrange-feature-impossible', [], {...fault, kind: features[fault.index]!.kind}),
	);
	if (what.length > 0)
		findings.push(
			finding('note', 'arrange-assumed', [], {
				what,
				...(decay.from === 'estimated' && {decaySeconds: decay.seconds}),
			}),
		);
	for (const {id, at, isFixed} of subs) {
		const on = standsOn(keepOut, at[0], at[1], subSize.halfMetres);
		if (on && !isFixed)
			findings.push(
				finding('doubt', 'arrange-stands-on', [id], {
					kind: on.kind,
					...(on.note !== undefined && {note: on.note}),
				}),
			);
	}

	for (const {id, at} of [...seats, ...subs])
		if (!isInside(shape, at)) findings.push(finding('problem', 'arrange-outside', [id]));
	if (places.length === 0) findings.push(finding('problem', 'arrange-no-place', []));
	if (subs.length === 1) findings.push(finding('note', 'arrange-one-sub', []));
	const steps = stepsOf(profile);
	return {
		room: {shape, decay, speedOfSound: inputs.speedOfSound},
		seats,
		subs,
		places,
		rowShiftsMetres: rowShifts(seats[0]!.at[1], shape.lengthMetres),
		steps,
		findings,
	};
}

/** Where the profile plans a thing to stand; undefined where it plans nothing for it. */
export function plannedAt({planned}: Pick<Profile, 'planned'>, id: string): Vector | undefined {
	const place = planned?.places.find(one => one.id === id);
	return place && [place.xMetres, place.yMetres, place.zMetres];
}

/**
Where a thing stands or is to stand: its plan until it was read against a wall, then what the tape tells; undefined where
nobody said.
*/
function standsAt(
	profile: Pick<Profile, 'planned' | 'tape'>,
	taped: RoomInputs['seats'],
	id: string,
): Vector | undefined {
	const isStaked = (profile.tape ?? []).some(
		({from, to, setAside}) =>
			!setAside && ((from === id && to.startsWith('wall:')) || (to === id && from.startsWith('wall:'))),
	);
	const byTape = taped.find(one => one.id === id)?.at;
	const byPlan = plannedAt(profile, id);
	return isStaked ? (byTape ?? byPlan) : (byPlan ?? byTape);
}

/** Whether everything stands where sound can be computed; else the findings say what does not. */
export const canBeJudged = ({findings}: Pick<ArrangementSpace, 'findings'>): boolean =>
	!findings.some(({code}) => code === 'arrange-outside');

/** Shifts of the row towards the back that keep it off both walls; 0 always among them. */
function rowShifts(seatMetres: number, lengthMetres: number): number[] {
	const {rowMetres, rowMostMetres, seatToWallMetres} = searchSteps;
	const count = Math.round(rowMostMetres / rowMetres);
	return Array.from(
		{length: 2 * count + 1},
		(_, i) => Math.round((i - count) * rowMetres * 100) / 100,
	).filter(shift => {
		const at = seatMetres + shift;
		// Nearer to the screen than a third of the room nobody watches.
		return shift === 0 || (at >= lengthMetres / 3 && at <= lengthMetres - seatToWallMetres);
	});
}

/** The steps of the box that gives each sub a delay and a gain of its own; undefined where none does. */
function stepsOf(profile: Profile): SettingSteps | undefined {
	const subs = subsOf(profile);
	const processor = subs[0] && processorOf(profile, subs[0]);
	if (!processor || subs.length < 2) return undefined;
	const outputs = new Set(subs.map(({processorOutput}) => processorOutput));
	if (outputs.size < subs.length) return undefined;
	return {
		delayStepMs: processor.delay.stepMs,
		mostDelayMs: processor.delay.maximumMs,
		gainStepDb: processor.gain.stepDb,
		leastGainDb: processor.gain.minimumDb,
		canInvert: processor.invertsOutputs ?? true,
	};
}
