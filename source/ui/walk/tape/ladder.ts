export const ladderCaution =
	'Ladder: firm ground, three points of contact, somebody near. Never lean out for a reading. Check that the mount holds.';
/** The same once up there. */
export const briefLadder = 'Ladder: never lean out.';
