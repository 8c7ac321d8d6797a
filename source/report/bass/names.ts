import {listed, nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import {formatLength} from '../../profile/units/length.ts';
import type {BlendAction} from '../../study/calibration/blend/actions.ts';
import {formatEntry} from '../entryText.ts';
import {formatDelay} from '../settingText.ts';

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
	const timing = profile.receiver?.timing;
	const value = (amount: number): string => {
		if (what === 'delay') return formatDelay(Number(amount.toFixed(3)));
		return timing?.kind === 'distance'
			? formatEntry(amount, timing)
			: formatLength(amount, profile.lengthUnit ?? 'm');
	};

	if (from !== undefined && to !== undefined) return `${where}: ${what} from ${value(from)} to ${value(to)}.`;
	return `${where}: ${what} ${value(Math.abs(change))} ${change < 0 ? 'less' : 'more'} than what stands.`;
}
