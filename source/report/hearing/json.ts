import type {Profile} from '../../profile/types.ts';
import type {HeardOffers} from '../../study/hearing/againstTape.ts';
import type {HeardLine} from '../../study/hearing/heardPlaying.ts';
import {saidJson} from '../said/json.ts';
import {sayIn} from '../said/say.ts';
import type {HeardText} from './text.ts';

/** What was heard as JSON for scripts; impulse responses and curves are left to the profile. */
export function heardJson(profile: Profile, heard: HeardText, offers: HeardOffers | undefined): string {
	const {files, rows, rounds, findings, blend, isTaken} = heard;
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
			seats: rounds.map(({seat, base, apart}) => ({
				seat,
				isToldApart: apart !== undefined,
				lines: base.playing.lines.map(lineJson),
			})),
			findings,
			offers,
			blend,
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
}: HeardLine) {
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
