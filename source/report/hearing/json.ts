import type {Profile} from '../../profile/types.ts';
import type {ShownLine} from '../../study/hearing/shown.ts';
import {saidJson} from '../said/json.ts';
import {sayIn} from '../said/say.ts';
import type {HeardText} from './text.ts';

/** What was heard as JSON for scripts; impulse responses and curves are left to the profile. */
export function heardJson(profile: Profile, heard: HeardText): string {
	const {files, rows, rounds, findings, offers, blend, state, isTaken} = heard;
	return saidJson(
		{
			files,
			playings: rows.map(({index, playing, seat, state, changed, isUsed, findings: own}) => ({
				number: index + 1,
				atSeconds: playing.atSeconds,
				size: playing.round.size,
				seat,
				state,
				changed,
				isUsed,
				clockPpm: playing.clockPpm,
				peak: playing.peak,
				findings: [...playing.findings, ...own],
			})),
			seats: rounds.map(({seat, base, isApart, apartBy}) => ({
				seat,
				isToldApart: isApart,
				toldApartBy: apartBy,
				lines: base.playing.lines.map(lineJson),
			})),
			findings,
			offers,
			blend,
			recordedState: state,
			isTaken,
		},
		sayIn(profile),
	);
}

function lineJson({
	channel,
	delayMs,
	sigmaMs,
	onset,
	polarity,
	levelDb,
	bassLevelDb,
	noiseBelowDb,
	decays,
	clarity,
}: ShownLine) {
	return {
		channel,
		arrivalMs: delayMs,
		sigmaMs,
		later: onset?.later,
		polarity,
		levelDb,
		bassLevelDb,
		noiseBelowDb,
		decays,
		clarity,
	};
}
