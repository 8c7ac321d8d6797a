import type {RoomRange} from '../building.ts';
import {type CrossoverTrial, crossoverTrials} from '../crossovers.ts';
import type {KitKind} from '../gear.ts';
import {type LineRun, lineRuns, roomRecordings} from '../heardLines.ts';
import {type TrimError, trimErrors} from '../levels.ts';
import {allProofs, type Standing} from '../proving.ts';
import {changedWays, oneWays, type RecordedRun, recordedRuns} from '../recording.ts';
import {pairRoundIn, roundIn} from '../round.ts';
import {type NetRun, netRun} from '../surveying.ts';
import {bareRoom, worldIn} from '../world.ts';
import {type BlendRun, blendRun} from './blendShare.ts';
import type {PairRun} from './pairShare.ts';
import {type ProofRun, proofRun} from './proofShare.ts';

/** What can be tried. `lines` is what is heard of each line, `one` the blend by one playing alone, `search` the other way through the blend, `clean` the proof without slips. */
export const shareNames = [
	'blend',
	'search',
	'proof',
	'clean',
	'tape',
	'levels',
	'crossovers',
	'hear',
	'one',
	'pair',
	'lines',
] as const;
export type ShareName = (typeof shareNames)[number];

export type TruthOptions = {
	readonly shares: readonly ShareName[];
	readonly kits: readonly KitKind[];
	readonly range: RoomRange;
	/** Number of the first room, and how many. */
	readonly from: number;
	readonly count: number;
};

/** Everything that was tried, one entry a run. */
export type Truth = {
	readonly blend: BlendRun[];
	readonly search: BlendRun[];
	readonly proof: ProofRun[];
	readonly tape: NetRun[];
	readonly levels: TrimError[];
	readonly crossovers: CrossoverTrial[];
	readonly hear: RecordedRun[];
	readonly pair: PairRun[];
	readonly lines: LineRun[];
};

/** Rooms in which seven channels at nine points, or four channels with all crossovers, are enough runs. */
const levelRooms = 40;
const crossoverRooms = 65;
/** Rooms in which seven slips a kit are enough rounds of each. */
const proofRooms = 130;
/**
A proof at the very spot after a slip asks for no bar, and the search for causes takes most of the time: every so many
rooms they are tried all the same.
*/
const everyRooms = 5;
/** Sweeps above the noise of the room where lines are heard, dB. */
const lineNoiseDb = 30;

export function emptyTruth(): Truth {
	return {
		blend: [],
		search: [],
		proof: [],
		tape: [],
		levels: [],
		crossovers: [],
		hear: [],
		pair: [],
		lines: [],
	};
}

/**
Tries everything that is asked for, room by room.

@returns A generator that yields after each room, so that progress can be shown and the run be stopped.
*/
export function* tryRooms(options: TruthOptions, truth: Truth): Generator<number> {
	const {shares, kits, range, from, count} = options;
	const isAsked = (name: ShareName) => shares.includes(name);
	for (let index = from; index < from + count; index++) {
		const room = bareRoom(range, index);
		const place = index - from;
		if (isAsked('tape')) truth.tape.push(netRun(room));
		for (const kit of kits) {
			const world = worldIn(room, kit);
			const isKnown = kit === 'known';
			if (isAsked('levels') && isKnown && place < levelRooms)
				truth.levels.push(...[1, 3, 5].flatMap(points => trimErrors(world, points)));
			const isProved = (isAsked('proof') || isAsked('clean')) && kit !== 'anechoic' && place < proofRooms;
			if (isAsked('blend') || isProved) {
				const round = roundIn(world);
				truth.blend.push(blendRun(round));
				if (isProved) {
					const isWhole = place % everyRooms === 0;
					const everywhere: Standing[] = isWhole ? ['spot', '12 cm'] : ['12 cm'];
					const slipsAt = isAsked('proof') ? everywhere : [];
					truth.proof.push(
						...allProofs(round, slipsAt, isWhole).map(proof => proofRun(world.seed, kit, proof)),
					);
				}
			}

			if (isAsked('hear') && kit !== 'anechoic') truth.hear.push(...recordedRuns(world, changedWays));
			if (isAsked('one') && kit !== 'anechoic') truth.hear.push(...recordedRuns(world, oneWays));
			if (isAsked('pair') && kit !== 'anechoic')
				truth.pair.push({...pairRoundIn(world), room: world.seed, kit});
			if (isAsked('lines') && kit !== 'anechoic')
				for (const recording of roomRecordings(world, [lineNoiseDb]))
					truth.lines.push(...lineRuns(recording));
			if (isAsked('search')) truth.search.push(blendRun(roundIn(world, 'search')));
			if (isAsked('crossovers') && isKnown && place < crossoverRooms)
				truth.crossovers.push(...crossoverTrials(world, roundIn(world, 'none').session.boxes));
		}

		yield index;
	}
}
