import type {Remark} from '../../../study/calibration/result.ts';

/** What strikes about a reading: a reason to ask once before it is taken, and words to show with it. */
export type Sanity = {readonly doubt?: string; readonly hint?: string};

/** Remarks on a reading as the walk uses them: problems and doubts are asked about, notes and advice are shown. */
export function sanityOf(remarks: readonly Remark[]): Sanity {
	const isAsked = ({kind}: Remark) => kind === 'problem' || kind === 'doubt';
	return {
		doubt: remarks.find(isAsked)?.text,
		hint: remarks.find(remark => !isAsked(remark))?.text,
	};
}
