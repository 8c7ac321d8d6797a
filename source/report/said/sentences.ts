import type {Say} from './say.ts';

/**
What a finding is said with, without the name of what it is about. The first part is the head: it begins small, has no
full stop, and can stand alone in a row of a table. What follows are whole sentences.
*/
export type Words = readonly [head: string, ...more: string[]];

/** The sentences of one topic: exactly one entry for each code of its table of facts. */
export type Sentences<Facts> = {
	readonly [Code in keyof Facts]: (facts: Facts[Code], say: Say) => Words;
};

/** A text as it begins a sentence or a row: its first letter large. */
export function capitalised(text: string): string {
	return text.replace(/^./u, first => first.toUpperCase());
}

/** A text that begins small and has no full stop as a sentence. */
export function asSentence(text: string): string {
	return ended(capitalised(text));
}

/** A text with its full stop; a question has its mark already. */
export function ended(text: string): string {
	return text.endsWith('?') ? text : `${text}.`;
}
