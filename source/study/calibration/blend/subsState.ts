import {effectOf, type Line, lineOf, orElse} from '../../../profile/ask/lines.ts';
import type {SetInForce} from '../../../profile/ask/settings.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import type {Profile} from '../../../profile/types.ts';
import {middleOf} from '../timing/middleOf.ts';
import type {ReadingChange} from './blendReadings.ts';
import type {BlendInputs} from './inputs.ts';

/** How the lines of the subs stand to each other: delay and polarity of each against the first. */
export type Relation = ReadonlyArray<{readonly apartMs: number; readonly isTurned: boolean}>;

/** What a set of settings makes of all subs together against the front speakers. */
export type SubsState = {
	/** Arrival of the subs' mean after each front speaker, ms. */
	readonly laterMs: ReadonlyMap<string, number>;
	readonly meanLaterMs: number;
	/** The first sub's line against the first front's. */
	readonly inverted: boolean;
	readonly relation: Relation;
	/** What the settings give each line of the subs, dB. */
	readonly gainsDb: readonly number[];
	/** What the settings give the subs more than each front speaker, dB. */
	readonly balanceDb: ReadonlyMap<string, number>;
	/** As the set says; absent where it does not. */
	readonly crossovers: ReadonlyMap<string, number | 'full'>;
	/** Absent where the set does not say. */
	readonly masterDb: number | undefined;
};

/** A line of sound with the subs on it and their arrival, ms. */
export type SubLine = {readonly line: Line; readonly subs: readonly string[]; readonly arrivalMs: number};

const mean = (values: readonly number[]) =>
	values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;

/** Whether the distances of all subs and fronts are known, so that what they give can be told. */
export function isPlaced({profile, arrivalsMs}: BlendInputs, fronts: readonly string[]): boolean {
	return [...fronts, ...subsOf(profile).map(({id}) => id)].every(id => arrivalsMs.has(id));
}

/** The lines of the subs in the profile's order; subs on one line move together whatever is dialled in. */
export function subLines(profile: Profile, arrivalsMs: ReadonlyMap<string, number>): SubLine[] {
	const found = new Map<string, {line: Line; subs: string[]}>();
	for (const {id} of subsOf(profile)) {
		const line = lineOf(profile, id);
		const key = `${line.channel} ${line.output ?? ''}`;
		const entry = found.get(key) ?? {line, subs: []};
		entry.subs.push(id);
		found.set(key, entry);
	}

	return [...found.values()].map(({line, subs}) => {
		const arrivals = subs.map(id => arrivalsMs.get(id) ?? 0);
		return {line, subs, arrivalMs: middleOf(arrivals)};
	});
}

/**
What sets of settings make of the subs against the front speakers.

@returns A function that computes each set once.
*/
export function statesOf(
	inputs: BlendInputs,
	fronts: readonly string[],
): (set: SetInForce | undefined) => SubsState {
	const {profile} = inputs;
	const arrivalsMs = isPlaced(inputs, fronts) ? inputs.arrivalsMs : new Map<string, number>();
	const lines = subLines(profile, arrivalsMs);
	const known = new Map<SetInForce | undefined, SubsState>();
	return set => {
		const found = known.get(set) ?? subsStateOf(profile, set, fronts, arrivalsMs, lines);
		known.set(set, found);
		return found;
	};
}

function subsStateOf(
	profile: Profile,
	set: SetInForce | undefined,
	fronts: readonly string[],
	arrivalsMs: ReadonlyMap<string, number>,
	lines: readonly SubLine[],
): SubsState {
	const effects = lines.map(({line}) => effectOf(profile, set, line));
	const at = lines.map(({arrivalMs}, index) => arrivalMs + orElse(effects[index]!.delayMs, 0));
	const turned = effects.map(({isInverted}) => isInverted);
	const subsMs = mean(at);
	const gainsDb = effects.map(({gainDb}) => orElse(gainDb, 0));
	const subsGainDb = mean(gainsDb);
	const ofFronts = fronts.map(id => [id, effectOf(profile, set, lineOf(profile, id))] as const);
	const laterMs = new Map(
		ofFronts.map(([id, {delayMs}]) => [id, subsMs - (arrivalsMs.get(id) ?? 0) - orElse(delayMs, 0)]),
	);
	return {
		laterMs,
		meanLaterMs: mean([...laterMs.values()]),
		inverted: (turned[0] ?? false) !== (ofFronts[0]?.[1].isInverted ?? false),
		relation: at.map((ms, index) => ({apartMs: ms - at[0]!, isTurned: turned[index] !== turned[0]})),
		gainsDb,
		balanceDb: new Map(ofFronts.map(([id, {gainDb}]) => [id, subsGainDb - orElse(gainDb, 0)])),
		crossovers: new Map(
			ofFronts.flatMap(([id, {crossoverHertz}]) =>
				crossoverHertz === 'unstated' ? [] : [[id, crossoverHertz] as const],
			),
		),
		masterDb: set?.masterVolumeDb,
	};
}

/** The same with what was changed for one reading. */
export function stateWithChange(
	state: SubsState,
	lines: readonly SubLine[],
	{addedMs, delayed, turned}: ReadingChange,
): SubsState {
	if (delayed.length === 0 && turned.length === 0) return state;
	const isIn = (ids: readonly string[]) => lines.map(({subs}) => subs.some(id => ids.includes(id)));
	const later = isIn(delayed).map(is => (is ? addedMs : 0));
	const flips = isIn(turned);
	const byMs = mean(later);
	return {
		...state,
		laterMs: new Map([...state.laterMs].map(([id, ms]) => [id, ms + byMs])),
		meanLaterMs: state.meanLaterMs + byMs,
		inverted: state.inverted !== (flips[0] ?? false),
		relation: state.relation.map(({apartMs, isTurned}, index) => ({
			apartMs: apartMs + later[index]! - later[0]!,
			isTurned: isTurned !== (flips[index] !== flips[0]),
		})),
	};
}

/** Whether the subs stand to each other alike. */
export function isSameRelation(one: Relation, other: Relation, toleranceMs: number): boolean {
	return one.every(
		({apartMs, isTurned}, index) =>
			isTurned === other[index]?.isTurned && Math.abs(apartMs - other[index]!.apartMs) <= toleranceMs,
	);
}
