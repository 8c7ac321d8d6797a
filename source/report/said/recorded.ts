import {listed, nameOf} from '../../profile/names.ts';
import type {Profile, Recording} from '../../profile/types.ts';
import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';
import type {BlendVerdict} from '../../study/hearing/blendVerdict.ts';
import type {oddsOfRecording} from '../../study/hearing/odds.ts';
import type {RecordedState} from '../../study/hearing/recordedState.ts';

export const recordingWayName = 'One file played, recorded at the seat';

/** What recording takes: `3 playings, 2 changes at a box, about 7 min`. */
export function recordingCost(playings: number, changes: number, minutes: number): string {
	const count = playings === 1 ? '1 playing' : `${playings} playings`;
	return `${count}, ${changes === 1 ? '1 change' : `${changes} changes`} at a box, about ${minutes} min`;
}

/** What it did in simulated rooms, and what the centre risks where it is not recorded. */
export function recordingOdds(
	{rooms, threeFronts, twoFronts}: typeof oddsOfRecording,
	hasCentre: boolean,
): string {
	const both = ({known, hidden}: typeof threeFronts, of: (odds: typeof known) => number) =>
		`${of(known)} %, with a hidden latency or turned lead ${of(hidden)} %`;
	const won = `In ${rooms} simulated rooms the mean of the fronts came out louder in ${both(hasCentre ? twoFronts : threeFronts, ({wonPercent}) => wonPercent)} (0.3 dB and more), softer in none.`;
	return hasCentre
		? `${won} The centre is not in the file of two channels: it came out softer in ${both(twoFronts, ({centreLostPercent}) => centreLostPercent)}. With all three fronts in the file: louder in ${both(threeFronts, ({wonPercent}) => wonPercent)}, no front softer.`
		: won;
}

/** What one playing alone did in simulated rooms, nothing touched between. */
export function onePlayingOdds({onePlaying}: typeof oddsOfRecording, hasCentre: boolean): string {
	const {known, hidden} = hasCentre ? onePlaying.threeFronts : onePlaying.twoFronts;
	const percent = (of: (odds: typeof known) => number) =>
		`${of(known)} %, with something hidden ${of(hidden)} %`;
	const lost = Math.max(known.lostPercent, hidden.lostPercent);
	const centre = Math.max(known.centreLostPercent, hidden.centreLostPercent);
	return `Its first playing alone, nothing touched, moves all subs together by its LFE sweep: in ${onePlaying.rooms} simulated rooms the mean of the fronts came out louder in ${percent(({wonPercent}) => wonPercent)}, softer in ${lost === 0 ? 'none' : `${lost} %`}${hasCentre ? `, the centre softer in ${centre === 0 ? 'none' : `${centre} %`}` : ''}.`;
}

/** Where a blend by recording is, and what is next. */
export function recordedSentence(profile: Profile, state: RecordedState): string {
	switch (state.kind) {
		case 'none':
			return 'Nothing was recorded yet.';
		case 'together':
			return 'Recorded as it stands; speakers and subs were not told apart, so no delay or polarity of the subs was found. It takes one more playing with the subs changed, the microphone left where it is; or the file of all channels, whose LFE sweep tells them apart by itself.';
		case 'stands':
			return 'Recorded: no delay or polarity of the subs gains 0.3 dB through the crossover. It stays as it stands.';
		case 'to enter':
			return `Recorded: ${formatSigned(state.gainDb, 1)} dB through the crossover expected with ${changesText(profile, state.recording)}. To dial in, then to verify by one more playing.`;
		case 'to verify':
			return `Dialled in, not yet verified: ${formatSigned(state.gainDb, 1)} dB through the crossover expected. Play the file once more as it stands now and record it at the same seat.`;
		case 'kept':
			return `Kept: one more playing says ${gainsText(profile, state.verdict)}.`;
		case 'put back':
			return state.notAsEnteredDb === undefined
				? `Tried and put back: one more playing says ${gainsText(profile, state.verdict)}.`
				: `Put back: one more playing says ${gainsText(profile, state.verdict)}. But its bass lies up to ${formatNumber(state.notAsEnteredDb, 0)} dB off what these entries should make: look first whether delay and polarity of the subs really stand in the boxes, and play it once more.`;
	}
}

function changesText(profile: Profile, {blend}: Recording): string {
	return listed(
		(blend?.groups ?? [])
			.filter(({addedMs, isTurned}) => addedMs !== 0 || isTurned)
			.map(({subs, addedMs, isTurned}) => {
				const delay =
					addedMs === 0
						? ''
						: ` ${formatNumber(Math.abs(addedMs), 1)} ms ${addedMs > 0 ? 'later' : 'earlier'}`;
				return `${listed(subs.map(id => nameOf(profile, id)))}${delay}${isTurned ? `${delay === '' ? '' : ' and'} turned` : ''}`;
			}),
	);
}

function gainsText(profile: Profile, {gainDb, fronts}: BlendVerdict): string {
	const each = fronts.map(
		({channel, gainDb: own}) => `${nameOf(profile, channel)} ${formatSigned(own, 1)} dB`,
	);
	return `${formatSigned(gainDb, 1)} dB through the crossover (${listed(each)})`;
}
