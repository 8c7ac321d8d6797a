import {finding} from '../../profile/finding.ts';
import {type Separated, type StateChange, separate} from './apart/separate.ts';
import type {HearingFinding} from './facts.ts';
import type {HeardPlaying} from './heardPlaying.ts';
import {type HeardState, stateAgainst} from './heardState.ts';
import {shiftBetween, spotsOf} from './spots.ts';
import type {SubGroup} from './visit.ts';

/** One playing as it is understood. */
export type PlayingRow = {
	/** Place among all playings, in the order in which they were recorded. */
	readonly index: number;
	readonly playing: HeardPlaying;
	/** Absent where there are more spots than seats. */
	readonly seat?: string;
	readonly state: HeardState;
	/** Groups of subs that were changed in it against as it stands. */
	readonly changed: readonly string[];
	/** Whether a result is taken from it. */
	readonly isUsed: boolean;
	readonly findings: readonly HearingFinding[];
};

/** What was recorded at one seat. */
export type SeatRound = {
	readonly seat: string;
	/** The playing with everything as it stands. */
	readonly base: PlayingRow;
	/** Mains and subs by themselves, where enough playings were sound. */
	readonly apart?: Separated;
	/** Groups of subs of `apart`, in its order. */
	readonly groups: readonly SubGroup[];
};

/** A microphone that moved further is no longer at the same spot, metres. @see the error of the parts over the way moved: −15 dB at 5 cm. */
const mostMovedMetres = 0.03;
const levelChangeDb = 1;

/**
Sorts playings by what they are: which seat, which state of the subs, which are spare.

Seats are taken in their order, one a spot of the microphone. At the first as it stands comes first and each group is changed
in turn; the next seat takes the changes back, so that as it stands comes last.
*/
export function seatRounds(
	playings: readonly HeardPlaying[],
	seats: readonly string[],
	groups: readonly SubGroup[],
): {readonly rows: PlayingRow[]; readonly rounds: SeatRound[]} {
	const rows: PlayingRow[] = [];
	const rounds: SeatRound[] = [];
	for (const [spot, recorded] of spotsOf(playings).entries()) {
		const seat = seats[spot];
		const isBack = spot % 2 === 1 && recorded.length === groups.length + 1 && groups.length > 0;
		const inOrder = isBack ? [...recorded].reverse() : recorded;
		const understood = spotRows(inOrder, seat, groups, playings);
		rows.push(...understood);
		if (seat === undefined) continue;
		const chain = understood.filter(({isUsed}) => isUsed);
		const base = chain[0];
		if (!base) continue;
		const changes = changesOf(chain.length - 1, groups);
		const apart =
			changes.length > 0
				? separate(
						chain.map(({playing}) => playing),
						changes,
					)
				: undefined;
		rounds.push({seat, base, groups: changes.length > 0 ? groups : [], ...(apart && {apart})});
	}

	return {rows: rows.sort((a, b) => a.index - b.index), rounds};
}

function changesOf(count: number, groups: readonly SubGroup[]): StateChange[] {
	return count === groups.length
		? groups.map(({id, change}): StateChange => ({kind: change, group: id}))
		: [];
}

function spotRows(
	inOrder: readonly HeardPlaying[],
	seat: string | undefined,
	groups: readonly SubGroup[],
	all: readonly HeardPlaying[],
): PlayingRow[] {
	const base = inOrder[0]!;
	let next = 0;
	return inOrder.map((playing): PlayingRow => {
		const row = {index: all.indexOf(playing), playing, ...(seat !== undefined && {seat})};
		if (playing === base)
			return {...row, state: {kind: 'as it stands'}, changed: [], isUsed: seat !== undefined, findings: []};
		const state = stateAgainst(base, playing);
		const findings = movedFindings(base, playing);
		const expected = groups.slice(0, next + 1);
		const fits = next < groups.length && isState(state, expected.length, groups);
		const isSound = !findings.some(({kind}) => kind === 'problem');
		if (!fits && state.kind !== 'as it stands') findings.push(finding('doubt', 'heard-state-unknown', []));
		const isUsed = fits && isSound && seat !== undefined;
		if (isUsed) next += 1;
		return {...row, state, changed: isUsed ? expected.map(({id}) => id) : [], isUsed, findings};
	});
}

/** Whether a state is what so many changed groups of all give. */
function isState(state: HeardState, changed: number, groups: readonly SubGroup[]): boolean {
	if (changed < groups.length)
		return state.kind === 'partly' || state.kind === 'delayed' || state.kind === 'muted';
	return groups.every(({change}) => change === 'turned')
		? state.kind === 'turned' || (state.kind === 'delayed' && state.isTurned)
		: state.kind === 'muted';
}

function movedFindings(base: HeardPlaying, playing: HeardPlaying): HearingFinding[] {
	const shift = shiftBetween(base, playing);
	if (!shift) return [];
	const findings: HearingFinding[] = [];
	if (shift.movedMetres > mostMovedMetres)
		findings.push(finding('problem', 'heard-microphone-moved', [], {metres: shift.movedMetres}));
	if (Math.abs(shift.db) > levelChangeDb)
		findings.push(finding('note', 'heard-level-changed', [], {changeDb: shift.db}));
	return findings;
}
