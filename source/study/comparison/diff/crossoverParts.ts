import {partsOf} from './parts.ts';
import type {Part} from './profileDiff.ts';

export type CrossoverSide = {
	readonly dialledHertz: number;
	/** Low limit of the speaker, where stated. */
	readonly limitHertz: number | undefined;
	readonly choicesHertz: readonly number[];
};

/** The lowest choice that asks nothing of the speaker below its limit; the highest where none does. */
function lowestFitting(limitHertz: number, choicesHertz: readonly number[]): number {
	const sorted = [...choicesHertz].sort((a, b) => a - b);
	return sorted.find(choice => choice >= limitHertz) ?? sorted.at(-1)!;
}

/**
Why a crossover is another than before: another limit of the speaker, other choices of the receiver, or neither.

The shares of limit and choices follow from the lowest choice not below the limit, each averaged over both orders of
changing the two; what the user or the suggestion put on top of that is a choice among those that do.

@returns Parts in hertz; they add up to `after.dialledHertz − before.dialledHertz`.
@see Shapley, A value for n-person games (1953), for averaging over the orders.
*/
export function crossoverParts(before: CrossoverSide, after: CrossoverSide): Part[] {
	const change = after.dialledHertz - before.dialledHertz;
	const {limitHertz: limitBefore, choicesHertz: choicesBefore} = before;
	const {limitHertz: limitAfter, choicesHertz: choicesAfter} = after;
	const isKnown =
		limitBefore !== undefined &&
		limitAfter !== undefined &&
		choicesBefore.length > 0 &&
		choicesAfter.length > 0;
	if (!isKnown) return partsOf([['chosen', change]]);
	const both = lowestFitting(limitAfter, choicesAfter);
	const neither = lowestFitting(limitBefore, choicesBefore);
	const limitOnly = lowestFitting(limitAfter, choicesBefore);
	const choicesOnly = lowestFitting(limitBefore, choicesAfter);
	const limit = (limitOnly - neither + both - choicesOnly) / 2;
	const choices = (choicesOnly - neither + both - limitOnly) / 2;
	return partsOf([
		['speaker limit', limit],
		['choices', choices],
		['chosen', change - limit - choices],
	]);
}
