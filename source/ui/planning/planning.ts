import {finding} from '../../profile/finding.ts';
import type {Profile} from '../../profile/types.ts';
import {sentenceOf} from '../../report/said/said.ts';
import {sayIn} from '../../report/said/say.ts';
import {plannedPlaces} from '../../study/arrangement/answer.ts';
import type {ArrangementFinding} from '../../study/arrangement/facts.ts';
import {advisedRow} from '../../study/arrangement/ladder.ts';
import type {ThingMove} from '../../study/arrangement/moves.ts';
import {type LiveArrangement, type PlanBench, planBench} from '../../study/arrangement/planBench.ts';
import {type PlanSearchStep, searchPlan} from '../../study/arrangement/planSearch.ts';
import {planSpace} from '../../study/arrangement/planSpace.ts';
import type {ArrangementRow} from '../../study/arrangement/row.ts';
import {type ArrangementSpace, canBeJudged} from '../../study/arrangement/spaceOf.ts';
import type {Variant} from '../../study/arrangement/variants.ts';
import type {RoomFinding} from '../../study/room/facts.ts';
import type {Placed} from '../../study/room/roomStudy.ts';
import {tapedNetworkOf} from '../walk/sceneOf.ts';

/** A row of the ladder: an arrangement, where its subs and ears stand, and its levels there. */
export type PlanRow = ArrangementRow & {readonly live: LiveArrangement};

/** A thing that is being moved by arrows. */
export type Moving = {
	readonly id: string;
	readonly places: Variant;
	readonly stepMetres: number;
	readonly live: LiveArrangement;
};

/** What is being typed at the foot of the screen. */
export type Typing = {readonly what: 'thing' | 'notHere' | 'room'; readonly text: string};

export type PlanningPanel = 'plan' | 'curve' | 'moves' | 'why' | 'help';
/** What the rows are ordered by. */
export type PlanOrder = 'lift' | 'angles' | 'cable';

/** The state of planning one profile's room. */
export type Planning = {
	readonly profile: Profile;
	readonly space: ArrangementSpace;
	readonly speakers: readonly Placed[];
	readonly bench: PlanBench;
	/** The room as it stands, variants that were kept, what a search found. */
	readonly now: PlanRow;
	readonly kept: readonly PlanRow[];
	readonly found: readonly PlanRow[];
	readonly cursor: number;
	readonly order: PlanOrder;
	readonly view: PlanningPanel;
	/** First line shown of what does not fit. */
	readonly from: number;
	readonly moving?: Moving | undefined;
	readonly typing?: Typing | undefined;
	/** A search that is on its way; elsewhere, where it has no work of its own. */
	readonly search?:
		| {
				readonly work?: Generator<PlanSearchStep, readonly ArrangementRow[]> | undefined;
				readonly step?: PlanSearchStep | undefined;
		  }
		| undefined;
	readonly notes: ReadonlyArray<{readonly kind: 'note' | 'no'; readonly text: string}>;
	/** Profiles before each change made here, for undo. */
	readonly past: ReadonlyArray<Pick<Planning, 'profile' | 'kept'>>;
};

/** Opens the planning of a profile's room; where it is no room yet, what is missing or wrong. */
export function openPlan(
	profile: Profile,
): Planning | {readonly findings: ReadonlyArray<RoomFinding | ArrangementFinding>} {
	const found = planSpace(profile, tapedNetworkOf(profile));
	if (!found.shape) return found;
	const {space, speakers} = found;
	if (!canBeJudged(space)) return {findings: space.findings.filter(({kind}) => kind === 'problem')};
	const bench = planBench(space);
	const places = {subs: space.subs.map(({at}) => at), seats: space.seats.map(({at}) => at)};
	const live = bench.judge({...places, lifted: 0});
	return {
		profile,
		space,
		speakers,
		bench,
		now: {name: {kind: 'now'}, arrangement: live, places, live},
		kept: [],
		found: [],
		cursor: 0,
		order: 'lift',
		view: 'plan',
		from: 0,
		notes: [],
		past: [],
	};
}

/** A search over everything, about to begin: somebody has to work on it. */
export const startSearch = (planning: Planning): Planning => ({
	...planning,
	found: [],
	notes: [],
	search: {},
});

/** The search goes on here, in slices. */
export function searchHere(planning: Planning): Planning {
	const {profile, space, bench, now, search} = planning;
	return search
		? {...planning, search: {...search, work: searchPlan(profile, space, bench, now.arrangement)}}
		: planning;
}

/** A row with its places and its levels there. Another wall is another room: there it shows what stands. */
export function withLive({bench, now}: Pick<Planning, 'bench' | 'now'>, row: ArrangementRow): PlanRow {
	const {arrangement, name, places} = row;
	if (name.kind === 'wall') return {...row, places: now.places, live: now.live};
	const {seatsDb} = arrangement;
	const live = seatsDb ? {...arrangement, seatsDb} : bench.judge({...arrangement, ...places});
	return {...row, live};
}

/** A slice of the search; what it found so far shows, and its end is its result. */
export function workOn(planning: Planning, isOver: () => boolean): Planning {
	const work = planning.search?.work;
	if (!work) return planning;
	let next = work.next();
	while (!next.done && !isOver()) next = work.next();
	return next.done ? withAllFound(planning, next.value) : withStep(planning, next.value);
}

const rowsShown = ({rows}: PlanSearchStep) =>
	rows.map(({arrangement}) => arrangement.judged.meanDb).join(' ');
const shownOf = (step: PlanSearchStep) =>
	`${step.what} ${Math.floor((50 * step.done) / step.of)} ${rowsShown(step)}`;

/** How far a search is, and its rows so far; the same planning where that would show nothing new. */
export function withStep(planning: Planning, step: PlanSearchStep): Planning {
	const {search} = planning;
	if (!search || (search.step && shownOf(search.step) === shownOf(step))) return planning;
	const isSame = search.step !== undefined && rowsShown(step) === rowsShown(search.step);
	const found = isSame ? planning.found : step.rows.map(row => withLive(planning, row));
	return {...planning, found, search: {...search, step}};
}

/** The end of a search: its rows, with the cursor on the advised one. */
export function withAllFound(planning: Planning, rows: readonly ArrangementRow[]): Planning {
	if (!planning.search) return planning;
	const found = rows.map(row => withLive(planning, row));
	const {profile, space} = planning;
	const say = sayIn(profile, profile.lengthUnit ?? 'm');
	const cursor = bestRow({...planning, found});
	// What bounds the search, and that nothing better is sure, are answers too.
	const told = [
		...space.findings.filter(({code}) => code === 'arrange-no-place'),
		...(cursor === 0 ? [finding('note', 'arrange-nothing-better', [])] : []),
	];
	return {
		...planning,
		found,
		search: undefined,
		cursor,
		notes: told.map(one => ({kind: 'note', text: sentenceOf(one, say)})),
	};
}

/** Stops a search; what it has found so far stays. */
export function stopSearch(planning: Planning): Planning {
	const {search} = planning;
	if (!search) return planning;
	search.work?.return([]);
	const found = (search.step?.rows ?? []).map(row => withLive(planning, row));
	const text = found.length > 0 ? 'Stopped: these are the best so far.' : 'Stopped: nothing was found yet.';
	return {...planning, found, search: undefined, notes: [{kind: 'note', text}]};
}

/** The row that the ladder advises; the room as it stands where nothing better is sure. */
function bestRow({now, kept, found, space}: Planning): number {
	const advised = advisedRow(now.arrangement, found, space.seats.length);
	return advised === undefined ? 0 : 1 + kept.length + advised;
}

/** The profile with a row as its plan. */
export function withPlan(
	planning: Planning,
	moves: readonly ThingMove[],
	tolerance: {readonly withinMetres: number; readonly costDb: number},
): Profile {
	const {profile, space} = planning;
	const places = plannedPlaces(profile, space, moves).map(({id, at: [xMetres, yMetres, zMetres]}) => ({
		id,
		xMetres,
		yMetres,
		zMetres,
	}));
	const others = (profile.planned?.places ?? []).filter(({id}) => !places.some(place => place.id === id));
	return {...profile, planned: {...profile.planned, places: [...others, ...places], ...tolerance}};
}
