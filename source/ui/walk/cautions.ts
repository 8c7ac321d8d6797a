import type {Prompt} from './prompt/prompt.ts';

/**
The questions of one place with their cautions as they stand: the full text until an act that it is about was begun,
one short line after that.
*/
export function withCautions<Subject>(prompts: readonly Prompt<Subject>[]): Prompt<Subject>[] {
	const begun = new Set(prompts.flatMap(({caution, isAnswered}) => (caution && isAnswered ? [caution] : [])));
	return prompts.map(prompt =>
		prompt.caution && begun.has(prompt.caution)
			? {...prompt, caution: prompt.briefCaution ?? firstSentence(prompt.caution)}
			: prompt,
	);
}

function firstSentence(text: string): string {
	const end = text.indexOf('. ');
	return end < 0 ? text : text.slice(0, end + 1);
}
