import {isLfe} from '../../profile/channels.ts';
import {nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import type {Prompt, TakenAnswer} from '../walk/prompt/prompt.ts';

/** What can stand elsewhere than in the older profile, in its order: speakers, subs, seats, the screen. */
function movables(profile: Profile): ReadonlyArray<{readonly id: string; readonly name: string}> {
	const ids = [
		...profile.channels.map(({id}) => id).filter(id => !isLfe(id)),
		...(profile.subs ?? []).map(({id}) => id),
		...profile.seats.map(({id}) => id),
	];
	return [...ids.map(id => ({id, name: nameOf(profile, id)})), {id: 'screen', name: 'Screen'}];
}

/** What has moved or is new, by names or numbers; Enter for nothing. */
export function movedPrompt<Subject extends {readonly moved?: readonly string[]}>(
	draft: Subject,
	from: Profile,
): Prompt<Subject> {
	const things = movables(from);
	const nameText = (ids: readonly string[]) =>
		ids.length === 0
			? 'nothing'
			: things
					.filter(({id}) => ids.includes(id))
					.map(({name}) => name)
					.join(', ');
	return {
		id: 'new:moved',
		stop: 'new',
		question: 'What has moved or is new?',
		about: 'Numbers or names with blanks or commas between; all for everything. The rest comes along.',
		explain: `Readings of ${from.date} stay for what stands where it stood. A speaker changed for another is new.`,
		kind: 'text',
		choices: things.map(({name}) => ({label: name})),
		usualText: 'nothing',
		isRequired: true,
		values: draft.moved ? [nameText(draft.moved)] : [],
		isAnswered: draft.moved !== undefined,
		take(subject, text): TakenAnswer<Subject> {
			const found = readMoved(text, things);
			if (typeof found === 'string') return {kind: 'no', why: found};
			return {kind: 'taken', next: {...subject, moved: found}, readAs: nameText(found)};
		},
	};
}

/** Ids of what a text names by numbers or by the beginnings of names; a sentence where a part fits nothing or several. */
export function readMoved(
	text: string,
	things: ReadonlyArray<{readonly id: string; readonly name: string}>,
): readonly string[] | string {
	const plain = text.trim().toLowerCase();
	if (plain === 'nothing' || plain === '') return [];
	if (plain === 'all') return things.map(({id}) => id);
	const isNumbers = /^[\d\s,;]+$/.test(plain);
	const ids = new Set<string>();
	for (const part of plain.split(isNumbers ? /[\s,;]+/ : /\s*[,;]\s*/).filter(Boolean)) {
		if (/^\d+$/.test(part)) {
			const thing = things[Number(part) - 1];
			if (!thing) return `There is no ${part}: they go from 1 to ${things.length}.`;
			ids.add(thing.id);
			continue;
		}

		const wanted = part.split(/\s+/);
		const fitting = things.filter(({id, name}) => {
			const words = name.toLowerCase().split(/\s+/);
			return id.toLowerCase() === part || wanted.every(word => words.some(other => other.startsWith(word)));
		});
		if (fitting.length === 0) return `Nothing here is called “${part}”.`;
		if (fitting.length > 1)
			return `“${part}” may be ${fitting.map(({name}) => name).join(' or ')}. Type more of it, or the number.`;
		ids.add(fitting[0]!.id);
	}

	return [...ids];
}
