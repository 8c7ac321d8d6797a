import type {FindingOf} from '../../profile/finding.ts';
import type {FeatureFault, KeepOut} from './keepOut.ts';

/** What can be found about arrangements, with its facts. */
export type ArrangementFacts = {
	/** Places that were not taped and stand where such things usually do. */
	'arrange-assumed': {readonly what: ReadonlyArray<'seats' | 'subs'>; readonly decaySeconds?: number};
	/** A seat or sub that the room does not hold: beyond a wall, or above the ceiling there. */
	'arrange-outside': Readonly<Record<string, never>>;
	'arrange-no-place': Readonly<Record<string, never>>;
	'arrange-feature-impossible': FeatureFault & {readonly kind: KeepOut['kind']};
	'arrange-stands-on': {readonly kind: KeepOut['kind']; readonly note?: string};
	'arrange-nothing-better': Readonly<Record<string, never>>;
	'arrange-better': {readonly lifted: number; readonly gainDb: number; readonly seats: number};
	'arrange-unclear': {readonly lifted: number; readonly gainDb: number};
	'arrange-one-sub': Readonly<Record<string, never>>;
};

export type ArrangementFinding = FindingOf<ArrangementFacts>;
