import type {Aim} from './aiming.ts';
import type {Sightline} from './angles.ts';
import type {Correction} from './corrections.ts';
import type {PlacementFinding} from './facts.ts';
import type {ChannelJudgement} from './judge.ts';
import type {ScreenReport} from './screen.ts';
import type {PairSymmetry} from './symmetry.ts';

export type Placement = {
	readonly seat: string;
	readonly layout: string;
	/** What azimuth 0° is. */
	readonly ahead: string;
	/** For every seat whose place is known. */
	readonly sightlines: readonly Sightline[];
	readonly judgements: readonly ChannelJudgement[];
	readonly symmetry: readonly PairSymmetry[];
	readonly corrections: readonly Correction[];
	/** One move of the seat that brings both fronts right, where both are off in the same sense. */
	readonly seatMove?: Correction;
	readonly aims: readonly Aim[];
	readonly screen?: ScreenReport;
	/** Ids of things that a what-if put outside the room. */
	readonly outside: readonly string[];
	readonly remarks: readonly PlacementFinding[];
};
