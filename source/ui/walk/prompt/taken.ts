import type {Prompt, TakenAnswer} from './prompt.ts';
import type {Sanity} from './sanity.ts';

/** What the readers of lengths, levels, times and numbers have in common. */
export type Reading<Value extends {readonly readAs: string}> =
	| (Value & {readonly kind: 'ok'})
	| {readonly kind: 'ask'; readonly question: string; readonly choices: readonly Value[]}
	| {readonly kind: 'no'; readonly why: string};

/** Turns a reading into what becomes of the subject: `put` for the value read, or for each that may have been meant. */
export function takenFrom<Subject, Value extends {readonly readAs: string}>(
	reading: Reading<Value>,
	put: (value: Value) => Subject,
	sanity?: (value: Value) => Sanity,
): TakenAnswer<Subject> {
	if (reading.kind === 'no') return reading;
	if (reading.kind === 'ask') {
		const choices = reading.choices.map(choice => ({
			label: choice.readAs,
			next: put(choice),
			...sanity?.(choice),
		}));
		return {kind: 'ask', question: reading.question, choices};
	}

	return {kind: 'taken', next: put(reading), readAs: reading.readAs, ...sanity?.(reading)};
}

/** Which of several readings a new one would replace: the last that counts. */
export function lastOf(readings: readonly {readonly setAside?: boolean}[]): Pick<Prompt<never>, 'replaces'> {
	const replaces = readings.findLastIndex(({setAside}) => !setAside);
	return replaces < 0 ? {} : {replaces};
}
