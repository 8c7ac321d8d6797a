import type {Profile} from '../../../source/profile/types.ts';
import {type Sayable, sentenceOf} from '../../../source/report/said/said.ts';
import {sayIn} from '../../../source/report/said/say.ts';

/** What a finding of a profile is said with, in the profile's own unit; empty where there is no finding. */
export function sentence(found: Sayable | undefined, profile?: Profile): string {
	return found === undefined ? '' : sentenceOf(found, sayIn(profile ?? {seats: []}, profile?.lengthUnit));
}
