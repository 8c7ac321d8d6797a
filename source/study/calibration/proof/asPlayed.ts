import {
	type BoxState,
	channelState,
	isInverted,
	outputState,
	withChannel,
	withOutput,
} from '../../../profile/ask/boxState.ts';
import {type Line, lineOf} from '../../../profile/ask/lines.ts';
import {type ChangedOnPurpose, delayedSubs} from '../../../profile/ask/onPurpose.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import type {Profile} from '../../../profile/types.ts';

/** The nearest control of each line to its speaker or sub, each once. */
function linesOf(profile: Profile, atoms: readonly string[]): Line[] {
	const lines = atoms.map(atom => lineOf(profile, atom));
	return [...new Map(lines.map(line => [line.output ?? line.channel, line])).values()];
}

/** The same settings with one line later. */
export function withLaterLine(state: BoxState, {channel, output}: Line, byMs: number): BoxState {
	return output === undefined
		? withChannel(state, channel, {delayMs: channelState(state, channel).delayMs + byMs})
		: withOutput(state, output, {delayMs: outputState(state, output).delayMs + byMs});
}

/** The same settings with one line the other way round. */
export function withTurnedLine(state: BoxState, {channel, output}: Line): BoxState {
	return output === undefined
		? withChannel(state, channel, {isInverted: !channelState(state, channel).isInverted})
		: withOutput(state, output, {isInverted: !outputState(state, output).isInverted});
}

/**
Settings as they stood for a reading: those in force, with what was changed on purpose for it.

@param atoms - Speakers and subs that sounded.
*/
export function asPlayed(
	profile: Profile,
	state: BoxState,
	reading: ChangedOnPurpose,
	atoms: readonly string[],
): BoxState {
	const subs = subsOf(profile).map(({id}) => id);
	const sounding = subs.filter(id => atoms.includes(id));
	const {addedDelayMs = 0} = reading;
	const moved = delayedSubs(reading, sounding, sounding.length < atoms.length);
	const later =
		addedDelayMs === 0
			? state
			: linesOf(profile, moved).reduce((changed, line) => withLaterLine(changed, line, addedDelayMs), state);
	return linesOf(profile, reading.invertedSources ?? []).reduce(withTurnedLine, later);
}

/** Whether the subs of a reading are turned against its speaker. */
export const isTurnedAgainst = (state: BoxState, line: Line, other: Line): boolean =>
	isInverted(state, line) !== isInverted(state, other);
