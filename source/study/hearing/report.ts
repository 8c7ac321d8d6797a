import type {Profile, RecordedResponse} from '../../profile/types.ts';
import type {HeardOffers} from './againstTape.ts';
import {asNamed, channelNamer} from './asNamed.ts';
import type {TextCurve} from './curveText.ts';
import type {HearingFinding} from './facts.ts';
import {hearRecording} from './hearRecording.ts';
import type {OpenedSound} from './openedSound.ts';
import {type ProfileBlend, profileBlend} from './profileBlend.ts';
import type {HearingProgress} from './progress.ts';
import {type RecordedState, recordedState} from './recordedState.ts';
import {type ShownRound, type ShownRow, shownRound, shownRow} from './shown.ts';
import {type TakenRound, withRound} from './takeRound.ts';
import {type HeardIn, type HearingAsk, understand} from './understand.ts';
import {withoutMicrophone} from './withoutMicrophone.ts';

/** What became of one recording. */
export type HeardFile = {
	/** Base name. */
	readonly name: string;
	readonly seconds: number;
	readonly sampleRateHz: number;
	readonly playings: number;
	readonly findings: readonly HearingFinding[];
};

/** What all recordings say, as figures and findings: small enough to go from one thread to another. */
export type HeardReport = {
	readonly files: readonly HeardFile[];
	readonly rows: readonly ShownRow[];
	readonly rounds: readonly ShownRound[];
	/** About lines, held against tape and twins. */
	readonly findings: readonly HearingFinding[];
	readonly offers: HeardOffers;
	/** What the profile's recordings ask for once these are taken. */
	readonly blend?: ProfileBlend;
	/** How far the blend by recording is once these are taken. */
	readonly state: RecordedState;
	readonly taken: TakenRound;
};

/** What was plugged where, and the microphone's curve. */
export type HearingGear = {
	/** Channel of the profile by place of the file. */
	readonly replugged?: ReadonlyMap<string, string>;
	readonly microphone?: TextCurve;
};

/** Hears recordings one after the other, and tells what all of them say. */
export type HearingDesk = {
	/** Hears one; yields how far it is. Where it is stopped, the playings heard so far count. */
	readonly hear: (
		opened: OpenedSound,
		profile: Pick<Profile, 'channels'>,
		gear?: HearingGear,
	) => Generator<HearingProgress & {readonly playings: number}, void>;
	readonly report: (
		profile: Profile,
		distances: Parameters<typeof understand>[2],
		ask: HearingAsk,
	) => HeardReport;
};

/** @param digestOf - Digest of a text, by which responses are known. */
export function hearingDesk(digestOf: (text: string) => string): HearingDesk {
	const files: HeardFile[] = [];
	const heard: HeardIn[] = [];
	return {
		*hear({name, sha256, sound, findings}, profile, {replugged, microphone} = {}) {
			if (!sound) {
				files.push({name, seconds: 0, sampleRateHz: 0, playings: 0, findings});
				return;
			}

			const nameOf = channelNamer(profile.channels, replugged);
			const before = heard.length;
			const work = hearRecording(sound);
			let next = work.next();
			const take = (playings: readonly HeardIn['playing'][]) => {
				for (const playing of playings.slice(heard.length - before)) {
					const named = asNamed(playing, nameOf);
					const lines = microphone
						? named.lines.map(line => withoutMicrophone(line, microphone))
						: named.lines;
					heard.push({playing: {...named, lines}, file: name, sha256});
				}
			};
			while (!next.done) {
				const {best, ...progress} = next.value;
				take(best);
				yield {...progress, playings: heard.length - before};
				next = work.next();
			}

			const {playings, seconds, findings: own} = next.value;
			take(playings);
			files.push({
				name,
				seconds,
				sampleRateHz: sound.sampleRateHz,
				playings: playings.length,
				findings: [...findings, ...own],
			});
		},
		report(profile, distances, ask) {
			const {rows, rounds, findings, offers, kept} = understand(profile, heard, distances, ask);
			const taken: TakenRound = {
				recordings: kept.recordings,
				responses: kept.responses.map(
					(each): RecordedResponse => ({...each, sha256: digestOf(JSON.stringify(each))}) as RecordedResponse,
				),
			};
			const blend = profileBlend(withRound(profile, taken));
			const state = recordedState(withRound(profile, taken, blend));
			// Of a playing that verifies nobody asks by how it was told apart.
			const told = findings.filter(({code}) => code !== 'heard-apart-by-lfe' || blend?.by === 'lfe');
			return {
				files: [...files],
				rows: rows.map(shownRow),
				rounds: rounds.map(shownRound),
				findings: told,
				offers,
				state,
				taken,
				...(blend && {blend}),
			};
		},
	};
}
