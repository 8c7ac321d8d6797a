import type {Profile} from '../../../source/profile/types.ts';
import {responseFrequencies} from '../../../source/study/hearing/responses.ts';

/** One response of a flat line with a dip at 63 Hz, half an octave wide at its half. */
export type MadeLine = {
	readonly source: string;
	readonly seat: string;
	readonly round: 'first' | 'proof';
	readonly levelDb?: number;
	readonly dipDb: number;
	readonly decaySeconds?: number;
};

/** What a profile holds of made recordings: one in each round, with the lines' curves from closed form. */
export function madeRecordings(
	lines: readonly MadeLine[],
	microphone?: string,
): Required<Pick<Profile, 'recordings' | 'responses'>> {
	const days = {first: '2026-04-18', proof: '2026-04-19'} as const;
	return {
		recordings: (['first', 'proof'] as const).map(round => ({
			id: `recorded-${round}`,
			file: `${round}.wav`,
			sha256: round,
			atSeconds: 0,
			seat: lines[0]!.seat,
			round,
			clockPpm: 0,
			takenAt: `${days[round]}T20:00:00Z`,
			...(microphone === undefined ? {} : {microphone}),
		})),
		responses: lines.map(({source, seat, round, levelDb = -20, dipDb, decaySeconds}) => {
			const levelsDb = [...responseFrequencies()].map(
				hertz => levelDb - dipDb * Math.exp(-((Math.log2(hertz / 63) / 0.25) ** 2)),
			);
			return {
				source,
				seat,
				recording: `recorded-${round}`,
				round,
				sha256: JSON.stringify([source, seat, round, levelDb, dipDb, decaySeconds]),
				...(decaySeconds === undefined
					? {}
					: {decays: [{hertz: 500, rangeDb: 45, t20Seconds: decaySeconds}]}),
				points: {levelsDb, phasesDegrees: levelsDb.map(() => 0)},
			};
		}),
	};
}
