/**
How much a finding matters.

- `note`: explains; nothing to do.
- `advice`: something would make the result better.
- `doubt`: a result stands on something uncertain.
- `problem`: the answer is "no": nothing measured, the spread does not fit, a reading cannot be right.
*/
export type FindingKind = 'note' | 'advice' | 'doubt' | 'problem';

/**
Findings of one topic, from its table of facts: an object type with a key for each code, whose value holds what that
code needs to be said. SI, unit in the key; ids, never names; no sentence.
*/
export type FindingOf<Facts> = {
	readonly [Code in keyof Facts & string]: {
		readonly kind: FindingKind;
		/** Stable word for scripts and tests, kebab-case. */
		readonly code: Code;
		/** Ids of what it is about: channels, subs, seats, cables … Empty where it is about the whole. */
		readonly about: readonly string[];
		readonly facts: Facts[Code];
	};
}[keyof Facts & string];

type Made<Code extends string, Facts> = {
	readonly kind: FindingKind;
	readonly code: Code;
	readonly about: readonly string[];
	readonly facts: Facts;
};

/** A finding of whatever topic. */
export type AnyFinding = Made<string, object>;

/** The facts of a code that needs none to be said. */
export type NoFacts = Readonly<Record<string, never>>;

/**
A finding. What it is said with is `facts`; the sentence is made in `report/said/`.

@param about - Ids of what it is about; empty where it is about the whole.
*/
export function finding<Code extends string>(
	kind: FindingKind,
	code: Code,
	about: readonly string[],
): Made<Code, NoFacts>;
export function finding<Code extends string, const Facts extends object>(
	kind: FindingKind,
	code: Code,
	about: readonly string[],
	facts: Facts,
): Made<Code, Facts>;
export function finding(
	kind: FindingKind,
	code: string,
	about: readonly string[],
	facts: object = {},
): AnyFinding {
	return {kind, code, about, facts};
}

const seriousness: Readonly<Record<FindingKind, number>> = {problem: 3, doubt: 2, advice: 1, note: 0};

type OfAKind = {readonly kind: FindingKind};

/** Findings with the most serious first, else in their order. */
export function mostSeriousFirst<Each extends OfAKind>(findings: readonly Each[]): Each[] {
	return findings.toSorted((a, b) => seriousness[b.kind] - seriousness[a.kind]);
}

/** Whether the answer is "no". */
export function hasProblem(findings: readonly OfAKind[]): boolean {
	return findings.some(({kind}) => kind === 'problem');
}
