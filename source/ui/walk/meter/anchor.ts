import {nameOf} from '../../../profile/names.ts';
import type {Profile, Signal} from '../../../profile/types.ts';
import {formatNumber} from '../../../profile/units/decimalText.ts';
import {proofPlan} from '../../../study/calibration/proof/plan.ts';
import {derived} from '../../derived.ts';
import {isOfThisRound, startedFrom} from '../carry.ts';
import {measuredOf} from '../measured.ts';
import {walkingOrder} from '../order.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {briefNoise, noiseCaution} from './found.ts';
import {meterPrompt, weightingOf} from './meterPrompt.ts';

/** Further off than a meter put down anew reads, dB: the master volume stands elsewhere. Common practice, no source. */
const masterOffDb = 1;

/** What every channel should read under the settings that stand. */
const forecastOf = derived({measured: measuredOf}, ({measured}) => proofPlan(measured));

/**
One level of a speaker that did not move: it ties this round's meter and master volume to those of the older one.
Asked only where some level is to be read anew.
*/
export function anchorPrompts(
	profile: Profile,
	seat: string,
	signal: Signal,
	isNeeded: boolean,
): Prompt<Profile>[] {
	if (startedFrom(profile) === undefined) return [];
	const levels = (source: string) =>
		(profile.meter ?? []).filter(
			one => one.source === source && one.seat === seat && one.round === 'first' && !one.setAside,
		);
	const source = walkingOrder(profile).find(id => levels(id).some(one => !isOfThisRound(profile, one)));
	const isAnswered = source !== undefined && levels(source).some(one => isOfThisRound(profile, one));
	if (source === undefined || !(isNeeded || isAnswered)) return [];
	const name = nameOf(profile, source);
	const expected = forecastOf(profile).find(
		({source: [only, ...more], seat: at, signal: played}) =>
			only === source && more.length === 0 && at === seat && played.kind === 'pink',
	)?.predicted.value;
	const should = expected === undefined ? '' : ` until it reads ${formatNumber(expected, 1)} dB`;
	const prompt = meterPrompt(profile, {
		id: `meter:anchor:${source}`,
		source,
		seat,
		signal,
		question: `${name}, which did not move`,
		about: `Noise on ${name} alone. Turn the master volume${should}; type what it shows. ${weightingOf(profile)}, slow.`,
		// In words of its own: those of the older round were begun long ago.
		caution: `First noise of this round. ${noiseCaution}`,
		briefCaution: briefNoise,
		explain: 'So the levels of today and those that came along stand on one scale.',
		row: source,
	});
	return [
		{
			...prompt,
			isRequired: true,
			isAnswered,
			take(subject, text, taking) {
				const taken = prompt.take(subject, text, taking);
				if (taken.kind !== 'taken' || expected === undefined) return taken;
				const off = (taken.next.meter?.at(-1)?.decibels ?? expected) - expected;
				if (Math.abs(off) <= masterOffDb) return {...taken, doubt: undefined};
				const way = off > 0 ? 'down' : 'up';
				return {
					...taken,
					doubt: `${formatNumber(Math.abs(off), 1)} dB off: turn the master volume ${way} by that much, then type the new reading.`,
				};
			},
		},
	];
}
