import type {DrawerId, StopId} from '../places.ts';
import type {Prompt} from './prompt.ts';

/** A stop that shows a page instead of asking. */
export function pagePrompt<Subject>(
	id: StopId | DrawerId,
	question: string,
	explain: string,
): Prompt<Subject> {
	return {
		id,
		stop: id,
		question,
		kind: 'page',
		isRequired: false,
		values: [],
		isAnswered: true,
		explain,
		take: () => ({kind: 'no', why: 'There is nothing to type here.'}),
	};
}
