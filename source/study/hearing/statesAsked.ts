import {finding} from '../../profile/finding.ts';
import type {StateChange} from './apart/separate.ts';
import type {HearingFinding} from './facts.ts';
import type {HeardState} from './heardState.ts';
import type {PlayingRow} from './playingRow.ts';
import type {SubGroup} from './visit.ts';

/** A delay read from the sound is good to this, ms. */
const readDelayMs = 0.6;

/** Whether a state is what so many changed groups of all give. */
export function isState(state: HeardState, changed: number, groups: readonly SubGroup[]): boolean {
	if (changed < groups.length)
		return state.kind === 'partly' || state.kind === 'delayed' || state.kind === 'muted';
	// Whoever mutes or turns all there is in place of what was asked for has told them apart as well.
	if (groups.length === 1 && (state.kind === 'turned' || state.kind === 'muted')) return true;
	const areAll = (change: SubGroup['change']) => groups.every(group => group.change === change);
	if (areAll('turned')) return state.kind === 'turned' || (state.kind === 'delayed' && state.isTurned);
	if (areAll('delayed')) return state.kind === 'delayed' && isAsMoved(state, groups);
	return state.kind === 'muted';
}

function isAsMoved(state: Extract<HeardState, {kind: 'delayed'}>, [group]: readonly SubGroup[]): boolean {
	return !state.isTurned && Math.abs(state.ms - (group?.moved?.addedMs ?? 0)) <= readDelayMs;
}

/** What to say of a state that is none of those asked for. */
export function otherState(state: HeardState, groups: readonly SubGroup[]): HearingFinding {
	const moved = groups.length === 1 ? groups[0]!.moved : undefined;
	return moved && state.kind === 'delayed' && !state.isTurned
		? finding('doubt', 'heard-delay-other', [], {ms: state.ms, askedMs: moved.addedMs})
		: finding('doubt', 'heard-state-unknown', []);
}

/** What was done to each group, by the playings that follow as it stands; none where one of them is missing. */
export function changesOf(rows: readonly PlayingRow[], groups: readonly SubGroup[]): StateChange[] {
	return rows.length === groups.length
		? groups.map((group, index): StateChange => {
				// Of one group the sound tells what was done; of several it tells only that something was.
				const {kind} = rows[index]!.state;
				const isHeard = groups.length === 1 && (kind === 'turned' || kind === 'muted');
				const change = isHeard ? kind : group.change;
				return change === 'delayed'
					? {kind: change, group: group.id, ms: group.moved!.addedMs}
					: {kind: change, group: group.id};
			})
		: [];
}

/** Groups with what was really done to them. */
export function asChanged(groups: readonly SubGroup[], changes: readonly StateChange[]): SubGroup[] {
	return groups.map((group, index) => ({...group, change: changes[index]!.kind}));
}
