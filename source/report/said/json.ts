import type {AnyFinding} from '../../profile/finding.ts';
import {type Sayable, sentenceOf} from './said.ts';
import type {Say} from './say.ts';

/**
A result as JSON for scripts. Each finding in it has its sentence too, as `text`; `about` is an id, several ids as an
array, or left out.

@param say - How sentences are said: in metres, whatever unit the reader likes, so that the same readings give the same bytes.
*/
export function saidJson(value: unknown, say: Say): string {
	return JSON.stringify(value, (_, part: unknown) => (isFinding(part) ? withText(part, say) : part), 2);
}

function isFinding(part: unknown): part is AnyFinding {
	return typeof part === 'object' && part !== null && 'code' in part && 'kind' in part && 'facts' in part;
}

function withText(found: AnyFinding, say: Say) {
	const {kind, code, about, facts} = found;
	return {
		kind,
		code,
		...(about.length > 0 && {about: about.length === 1 ? about[0] : about}),
		text: sentenceOf(found as unknown as Sayable, say),
		facts,
	};
}
