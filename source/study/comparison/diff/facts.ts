import type {FindingOf, NoFacts} from '../../../profile/finding.ts';

type OfOneProfile = {readonly side: 'older' | 'newer'};

/** What findings on two profiles are said with. */
export type DiffFacts = {
	'one-profile-twice': NoFacts;
	'different-rooms': {readonly olderRoom: string; readonly newerRoom: string};
	'dates-run-backwards': {readonly firstDate: string; readonly secondDate: string};
	'settings-missing': OfOneProfile;
	'settings-stale': OfOneProfile;
	'receiver-missing': OfOneProfile;
	/** About the lines whose recordings hold a recorder's own colour. */
	'responses-coloured': NoFacts;
};

export type DiffFinding = FindingOf<DiffFacts>;
