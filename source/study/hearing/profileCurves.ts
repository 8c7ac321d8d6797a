import type {Profile, RecordedResponse} from '../../profile/types.ts';
import type {LevelCurve} from './curveFigures.ts';
import {responseFrequencies} from './responses.ts';

/** A curve of a profile with what it is of. */
export type ProfileCurve = {
	readonly source: string;
	readonly seat: string;
	readonly part: 'all' | 'main' | 'subs';
	readonly recording: string | undefined;
	readonly date: string;
	readonly isMicrophoneKnown: boolean;
	readonly round: 'first' | 'proof';
	/** Digest of the response as kept. */
	readonly sha256: string;
	/** In the meter's band of its kind, and from 28.2 to 112.2 Hz, dB re the file. */
	readonly levelDb?: number;
	readonly bassLevelDb?: number;
	/** Decay in the octave at 500 Hz, seconds. */
	readonly decaySeconds?: number;
	readonly curve: LevelCurve;
};

/** Every curve that a profile holds, in the order in which they were taken. */
export function profileCurves(profile: Pick<Profile, 'date' | 'recordings' | 'responses'>): ProfileCurve[] {
	const frequencies = responseFrequencies();
	return (profile.responses ?? []).flatMap((each: RecordedResponse) => {
		if (!each.points || each.setAside) return [];
		const recording = profile.recordings?.find(({id}) => id === each.recording);
		const decay = each.decays?.find(({hertz}) => hertz === 500);
		const seconds = decay?.t20Seconds ?? decay?.edtSeconds;
		const count = Math.min(frequencies.length, each.points.levelsDb.length);
		return [
			{
				source: [each.source].flat().join('+'),
				seat: each.seat,
				part: each.part ?? 'all',
				recording: each.recording,
				date: recording?.takenAt?.slice(0, 10) ?? profile.date,
				round: each.round ?? recording?.round ?? 'first',
				sha256: each.sha256,
				...(each.levelDb !== undefined && {levelDb: each.levelDb}),
				...(each.bassLevelDb !== undefined && {bassLevelDb: each.bassLevelDb}),
				isMicrophoneKnown: recording?.microphone !== undefined,
				...(seconds !== undefined && {decaySeconds: seconds}),
				curve: {
					frequenciesHz: frequencies.slice(0, count),
					levelsDb: Float64Array.from(each.points.levelsDb.slice(0, count)),
				},
			},
		];
	});
}
