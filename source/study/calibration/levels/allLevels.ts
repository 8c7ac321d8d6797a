import {usualMainsBand} from '../../../profile/practice.ts';
import type {Bench} from '../bench.ts';
import type {LevelFinding} from './facts.ts';
import {levelContext} from './levelContext.ts';
import {levelOverSeats, levelSeats} from './levelSeats.ts';
import type {SeatLevel} from './levels.ts';
import {type SubLevels, subLevels} from './subs.ts';
import type {SubWish} from './subsTogether.ts';

export type AllLevels = {
	/** Seats that the levels are made for. */
	readonly seats: readonly string[];
	/** Of channels with a speaker; what was not metered is absent. */
	readonly mains: ReadonlyMap<string, SeatLevel>;
	readonly remarks: ReadonlyMap<string, readonly LevelFinding[]>;
	readonly subs: SubLevels;
	/** The master volume that most readings were taken at, dB; `undefined` where none says. */
	readonly usualMasterDb: number | undefined;
};

/**
Levels of every speaker and sub at the seats they are made for, and what the subs need to meet theirs.

@param arrivalsMs - Of subs at the reference seat with no delay dialled in, ms.
@param wishes - By sub, delay and polarity that the blend has verified on top of what distances give.
*/
export function allLevels(
	bench: Bench,
	arrivalsMs: ReadonlyMap<string, number>,
	wishes?: ReadonlyMap<string, SubWish>,
): AllLevels {
	const {profile, mains, subs, observations, subTargetDb} = bench;
	const context = levelContext(profile, observations);
	const sources = [...mains, ...subs].map(({id}) => id);
	const seats = levelSeats(profile, observations, sources);
	const levels = new Map<string, SeatLevel>();
	const remarks = new Map<string, readonly LevelFinding[]>();
	for (const {id} of mains) {
		const found = levelOverSeats(context, seats, id, usualMainsBand);
		remarks.set(id, found.remarks);
		if (found.level) levels.set(id, found.level);
	}

	return {
		seats: seats.map(({id}) => id),
		mains: levels,
		remarks,
		subs: subLevels(context, seats, subTargetDb, arrivalsMs, wishes),
		usualMasterDb: context.usualMasterDb,
	};
}
