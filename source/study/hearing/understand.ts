import {referenceSeat} from '../../profile/ask/seats.ts';
import {standingSettings} from '../../profile/ask/settings.ts';
import {finding} from '../../profile/finding.ts';
import type {Profile, Recording} from '../../profile/types.ts';
import {speedOfSound} from '../../science/acoustics/air.ts';
import {againstTape, type HeardOffers} from './againstTape.ts';
import {statedLowPasses} from './apart/statedLowPasses.ts';
import {lowCutFindings} from './checks/lowCut.ts';
import {crossoverUnder} from './crossoverOf.ts';
import {expectedLines} from './expected.ts';
import type {HearingFinding} from './facts.ts';
import type {HeardPlaying} from './heardPlaying.ts';
import {type KeptResponse, keptRound} from './keepRound.ts';
import type {PlayingNames, PlayingRow, SeatRound} from './playingRow.ts';
import {seatRounds} from './seatRound.ts';
import {spoiledLines} from './soundness.ts';
import {allSubsGroup, subGroups} from './visit.ts';

/** A playing with the recording that it was found in. */
export type HeardIn = {
	readonly playing: HeardPlaying;
	/** Base name and digest of the file. */
	readonly file: string;
	readonly sha256: string;
};

/** How a person wants recordings to be understood. */
export type HearingAsk = {
	readonly round: 'first' | 'proof';
	/** Seats of the spots in their order; the reference seat first where not given. */
	readonly seats?: readonly string[];
	readonly names?: PlayingNames;
	/** Lines that are not to be taken, as `seat channel`. */
	readonly leftOut?: readonly string[];
	/** Base name of the microphone's curve, where one was taken off. */
	readonly microphone?: string;
	readonly takenAt: string;
};

/** What recordings say, once their playings are sorted. */
export type Understood = {
	readonly rows: readonly PlayingRow[];
	readonly rounds: readonly SeatRound[];
	readonly findings: readonly HearingFinding[];
	readonly offers: HeardOffers;
	/** What goes into the profile: only what is sound and wanted. */
	readonly kept: {readonly recordings: readonly Recording[]; readonly responses: readonly KeptResponse[]};
};

/**
Sorts playings by seat and state, holds the reference seat's lines against tape, latencies and settings in force, and says
what is to be kept.

@param distances - Of channels from the reference seat, metres; those that are missing were not taped.
*/
export function understand(
	profile: Profile,
	heard: readonly HeardIn[],
	distances: ReadonlyMap<string, {readonly metres: number; readonly sigmaMetres: number}>,
	ask: HearingAsk,
): Understood {
	const playings = heard.map(({playing}) => playing);
	const inForce = standingSettings(profile);
	const whole = allSubsGroup(profile);
	const {rows, rounds} = seatRounds(
		playings,
		ask.seats ?? seatsInOrder(profile),
		subGroups(profile),
		ask.names,
		channel => crossoverUnder(profile, inForce, channel),
		whole && {lowPasses: statedLowPasses(profile, inForce), group: whole},
	);
	const speed = speedOfSound(profile.air).metresPerSecond;
	// Distances are those of the reference seat: only there arrivals can be held against them.
	const reference = rounds.find(({seat}) => seat === referenceSeat(profile).id);
	const held =
		reference &&
		againstTape(reference.base.playing.lines, expectedLines(profile, distances, inForce, speed), speed);
	const colour =
		ask.microphone !== undefined || rounds.length === 0
			? []
			: [finding('note', 'heard-no-microphone-curve', [])];
	const lowCut =
		ask.microphone === undefined && rounds[0] ? lowCutFindings(rounds[0].base.playing.lines) : [];
	const findings = [...(held?.findings ?? []), ...rounds.flatMap(lfeFindings), ...colour, ...lowCut];
	const leftOut = new Set(ask.leftOut ?? []);
	const spoiled = (seat: string, channel: string) => {
		const round = rounds.find(each => each.seat === seat)!;
		const own = spoiledLines([...round.base.playing.findings, ...(round === reference ? findings : [])]);
		return own.has(channel);
	};
	const idOf = idsFor(profile);
	const kept = keptRound(
		rows,
		rounds,
		({index}) => ({
			file: heard[index]!.file,
			sha256: heard[index]!.sha256,
			round: ask.round,
			...(inForce && {inForce: inForce.id}),
			...(ask.microphone !== undefined && {microphone: ask.microphone}),
			takenAt: ask.takenAt,
		}),
		idOf,
		(seat, channel) => !leftOut.has(`${seat} ${channel}`) && !spoiled(seat, channel),
	);
	return {rows, rounds, findings, offers: held?.offers ?? {latencies: [], distances: []}, kept};
}

/** What one playing alone tells of the subs, or why it does not. */
function lfeFindings({agreement, base}: SeatRound): HearingFinding[] {
	if (!agreement) return [];
	const about = base.playing.lines.filter(({isSub, onset}) => isSub && onset).map(({channel}) => channel);
	const {db, ms, isGood} = agreement;
	const facts = {db, ...(Number.isFinite(ms) && {ms})};
	return [
		isGood
			? finding('note', 'heard-apart-by-lfe', about.slice(0, 1), facts)
			: finding('doubt', 'heard-lfe-disagrees', about.slice(0, 1), facts),
	];
}

/** The reference seat, then the others as the profile has them. */
export function seatsInOrder(profile: Pick<Profile, 'seats'>): string[] {
	const first = referenceSeat(profile).id;
	return [first, ...profile.seats.map(({id}) => id).filter(id => id !== first)];
}

/** Ids r1, r2, … after those that the profile has. */
function idsFor({recordings = []}: Profile): (row: {readonly index: number}) => string {
	const numbers = recordings.flatMap(({id}) => (/^r\d+$/.test(id) ? Number(id.slice(1)) : []));
	const last = Math.max(0, ...numbers);
	return ({index}) => `r${last + 1 + index}`;
}
