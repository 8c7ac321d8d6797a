import {localisableFromHertz, localisedFromHertz, toleranceMs} from '../../../profile/practice.ts';
import {formatSigned} from '../../../profile/units/decimalText.ts';
import {inDb} from '../words.ts';
import type {CrossoverChoice} from './rank.ts';

const hz = (value: number) => `${Number.isInteger(value) ? value : value.toFixed(0)} Hz`;

/** When the sub should arrive, in words. */
function arrival(subDelayMs: number): string {
	const size = Math.abs(subDelayMs).toFixed(1);
	return Number(size) === 0
		? 'together with the speaker'
		: `${size} ms ${subDelayMs < 0 ? 'before' : 'after'} the speaker`;
}

/**
Why a choice stands where it does, in plain words.

@param limitHz - The speaker's half-power limit, or undefined where it reaches down without one.
@param limitAssumed - Whether that limit is only the usual one of a small box.
*/
export function choiceReasons(
	choice: CrossoverChoice,
	limitHz: number | undefined,
	limitAssumed: boolean,
): string[] {
	const reasons: string[] = [];
	if (limitHz !== undefined) {
		const whose = limitAssumed ? 'limit taken for an unknown speaker' : "speaker's limit";
		reasons.push(
			choice.belowLimit
				? `${hz(choice.hertz)} lies below the ${whose}, ${hz(limitHz)}: a hole stays between speaker and sub.`
				: `The ${whose} is ${hz(limitHz)} (−3 dB); the high-pass leaves ${inDb(choice.driveLeftDb)} of drive there.`,
		);
	}

	reasons.push(
		`Cone movement falls by ${inDb(choice.excursionReliefDb)} against full range.`,
		`Speaker and sub add up within ${inDb(choice.rippleDb)} from ${hz(choice.hertz / 2)} to ${hz(choice.hertz * 2)}` +
			`, with the sub arriving ${arrival(choice.subDelayMs)}${choice.inverted ? ', its polarity turned' : ''}.`,
		`${toleranceMs} ms off costs ${inDb(choice.toleranceDb)} more ripple.`,
	);
	if (choice.hertz > localisedFromHertz) {
		reasons.push(`Above ${hz(localisedFromHertz)} a sub is heard as a place of its own.`);
	} else if (choice.hertz > localisableFromHertz) {
		reasons.push(`Above ${hz(localisableFromHertz)} a sub begins to be heard as a place of its own.`);
	}

	return reasons;
}

/** What changes when a neighbouring choice is taken instead, in one sentence. */
export function stepChanges(from: CrossoverChoice, to: CrossoverChoice): string {
	const change = (value: number, unit: string) => `${formatSigned(value, 1)} ${unit}`;
	const parts = [
		`ripple ${change(to.rippleDb - from.rippleDb, 'dB')}`,
		`drive at the limit ${change(to.driveLeftDb - from.driveLeftDb, 'dB')}`,
		`cone movement ${change(from.excursionReliefDb - to.excursionReliefDb, 'dB')}`,
		`delay wanted ${change(to.subDelayMs - from.subDelayMs, 'ms')}`,
	];
	const below = to.belowLimit ? '; below the speaker’s limit' : '';
	const place =
		to.hertz > localisableFromHertz && to.hertz > from.hertz ? '; the sub is easier to place by ear' : '';
	return `${hz(to.hertz)}: ${parts.join(', ')}${below}${place}.`;
}
