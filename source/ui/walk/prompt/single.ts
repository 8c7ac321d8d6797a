import type {WalkPlace} from '../places.ts';
import type {Choice, Prompt} from './prompt.ts';
import {type Reading, takenFrom} from './taken.ts';

type Common = {
	readonly id: string;
	readonly stop: WalkPlace;
	readonly question: string;
	readonly about?: string;
	readonly explain: string;
	readonly drawing?: readonly string[];
	readonly caution?: string;
	readonly briefCaution?: string;
	readonly row?: string;
	readonly isRequired?: boolean;
};

/** A question for one value; a new one replaces it. `shown` is the value so far, undefined where there is none. */
export function valuePrompt<Subject, Value extends {readonly readAs: string}>(
	common: Common & {
		readonly unit?: string;
		readonly shown: string | undefined;
		readonly read: (text: string) => Reading<Value>;
		readonly put: (subject: Subject, value: Value) => Subject;
	},
): Prompt<Subject> {
	const {shown, read, put, isRequired = false, ...rest} = common;
	return {
		...rest,
		kind: 'reading',
		isRequired,
		values: shown === undefined ? [] : [shown],
		isAnswered: shown !== undefined,
		take: (subject, text) => takenFrom(read(text), value => put(subject, value)),
	};
}

/** A question whose answer is a line of text. */
export function textPrompt<Subject>(
	common: Common & {
		readonly shown: string | undefined;
		/** Answer that Enter alone gives. */
		readonly usualText?: string;
		readonly put: (subject: Subject, text: string) => Subject;
	},
): Prompt<Subject> {
	const {shown, put, isRequired = false, ...rest} = common;
	return {
		...rest,
		kind: 'text',
		isRequired,
		values: shown === undefined ? [] : [shown],
		isAnswered: shown !== undefined,
		take: (subject, text) => ({kind: 'taken', next: put(subject, text), readAs: text}),
	};
}

export type OfferedChoice<Subject> = Choice & {
	/** Other words that it may be typed as, in small letters. */
	readonly also?: readonly string[];
	readonly put: (subject: Subject) => Subject;
};

/** A question with numbered answers, which may also be typed as they read. `chosen` is the answer so far, from 0. */
export function choicePrompt<Subject>(
	common: Common & {
		readonly chosen: number | undefined;
		/** The answer in words where it is none of the choices. */
		readonly other?: string;
		readonly usual?: number;
		readonly offers: ReadonlyArray<OfferedChoice<Subject>>;
	},
): Prompt<Subject> {
	const {chosen, other, offers, isRequired = false, ...rest} = common;
	const shown = chosen === undefined ? other : offers[chosen]?.label;
	return {
		...rest,
		kind: 'choice',
		isRequired,
		choices: offers.map(({label, hint}) => ({label, hint})),
		values: shown === undefined ? [] : [shown],
		isAnswered: shown !== undefined,
		take(subject, text) {
			const typed = text.trim().toLowerCase();
			const number = Number(typed);
			const offer =
				(Number.isInteger(number) ? offers[number - 1] : undefined) ??
				offers.find(({label, also}) => label.toLowerCase() === typed || also?.includes(typed));
			if (!offer)
				return {
					kind: 'no',
					why: `“${typed.slice(0, 20)}” is none of these. ${offers.length === 2 ? 'Type 1 or 2' : `Type a number from 1 to ${offers.length}`}.`,
				};
			return {kind: 'taken', next: offer.put(subject), readAs: offer.label};
		},
	};
}
