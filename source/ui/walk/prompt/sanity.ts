import {type Sayable, sentenceOf} from '../../../report/said/said.ts';
import type {Say} from '../../../report/said/say.ts';

/** What strikes about a reading: a reason to ask once before it is taken, and words to show with it. */
export type Sanity = {readonly doubt?: string; readonly hint?: string};

/** Remarks on a reading as the walk uses them: problems and doubts are asked about, notes and advice are shown. */
export function sanityOf(remarks: readonly Sayable[], say: Say): Sanity {
	const isAsked = ({kind}: Sayable) => kind === 'problem' || kind === 'doubt';
	const said = (remark: Sayable | undefined) => remark && sentenceOf(remark, say);
	return {
		doubt: said(remarks.find(isAsked)),
		hint: said(remarks.find(remark => !isAsked(remark))),
	};
}
