import {listed, nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import type {BlendAction} from '../../study/calibration/blend/actions.ts';
import {entryValue} from '../entryValue.ts';

/** Names of several, with “and” before the last. */
export function plainNames(profile: Profile, ids: readonly string[]): string {
	return listed(ids.map(id => nameOf(profile, id)));
}

/** One change on one box in a sentence. */
export function actionSentence(profile: Profile, action: BlendAction): string {
	const {box, about, what, from, to, change = 0} = action;
	const where = {
		receiver: `Receiver, ${nameOf(profile, about)}`,
		processor: `Bass processor, output ${about}`,
		sub: `At ${nameOf(profile, about)} itself`,
	}[box];
	if (what === 'polarity') return `${where}: invert the polarity.`;
	const value = (amount: number) => entryValue(profile, what, amount);
	if (from !== undefined && to !== undefined) return `${where}: ${what} from ${value(from)} to ${value(to)}.`;
	return `${where}: ${what} ${value(Math.abs(change))} ${change < 0 ? 'less' : 'more'} than what stands.`;
}
