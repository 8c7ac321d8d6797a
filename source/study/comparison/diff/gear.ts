import type {Profile} from '../../../profile/types.ts';
import {differingFields} from './equality.ts';
import type {Matching} from './match.ts';
import type {Change, Match} from './profileDiff.ts';
import {kindWeight} from './weights.ts';

function fieldsChange(about: string, name: string, before: unknown, after: unknown): Change[] {
	const fields = differingFields(before ?? {}, after ?? {});
	if (fields.length === 0) return [];
	const isReplaced = fields.some(field => field.before !== undefined && field.after !== undefined);
	const kind = isReplaced ? 'replaced' : 'stated';
	return [{kind, about, name, fields, weight: kindWeight[kind]}];
}

function without(value: object | undefined, ...keys: readonly string[]): object | undefined {
	return value && Object.fromEntries(Object.entries(value).filter(([key]) => !keys.includes(key)));
}

/** Keys that are compared in a place of their own, or that say nothing about the room. */
const comparedElsewhere = new Set(
	'format name date note walk lengthUnit room air screen seats channels subs receiver bassProcessor kit target tape meter settings'.split(
		' ',
	),
);

/** Everything else that a profile holds, also keys of later formats: a difference there must not be called the same. */
function otherKeys(older: Profile, newer: Profile): Change[] {
	const keys = [...new Set([...Object.keys(older), ...Object.keys(newer)])];
	return keys
		.filter(key => !comparedElsewhere.has(key))
		.flatMap(key => fieldsChange(key, 'The profile', {[key]: older[key]}, {[key]: newer[key]}));
}

/** What was renamed, added, removed or replaced: speakers, subs, seats, boxes, room, air, kit and target. */
export function gearChanges(older: Profile, newer: Profile, {matches, removed, added}: Matching): Change[] {
	const lists = (kind: Match['kind'], profile: Profile): ReadonlyArray<{readonly id: string}> =>
		kind === 'channel' ? profile.channels : kind === 'sub' ? (profile.subs ?? []) : profile.seats;

	const matched = matches.flatMap((match): Change[] => {
		const isRenamed = match.older !== match.newer || match.olderName !== match.name;
		const renamed: Change[] = isRenamed
			? [{kind: 'renamed', match, about: match.newer, weight: kindWeight.renamed}]
			: [];
		if (match.kind === 'output') return renamed;
		const before = lists(match.kind, older).find(({id}) => id === match.older);
		const after = lists(match.kind, newer).find(({id}) => id === match.newer);
		const data = fieldsChange(
			match.newer,
			match.name,
			without(before, 'id', 'name'),
			without(after, 'id', 'name'),
		);
		return [...renamed, ...data];
	});

	const box = (what: 'receiver' | 'processor', name: string, before?: object, after?: object): Change[] => {
		if (before && after) return fieldsChange(what, name, before, after);
		if (!before && !after) return [];
		return [{kind: after ? 'added' : 'removed', what, about: what, name, weight: kindWeight.addedOrRemoved}];
	};

	const unmatched = (kind: 'added' | 'removed', things: Matching['added']): Change[] =>
		things.map(({kind: what, id, name}) => ({
			kind,
			what,
			about: id,
			name,
			weight: kindWeight.addedOrRemoved,
		}));

	return [
		...unmatched('removed', removed),
		...unmatched('added', added),
		...matched,
		...box('receiver', 'The receiver', older.receiver, newer.receiver),
		...box('processor', 'The bass processor', older.bassProcessor, newer.bassProcessor),
		...fieldsChange('room', 'The room', without(older.room, 'name'), without(newer.room, 'name')),
		...fieldsChange('screen', 'The screen', older.screen, newer.screen),
		...fieldsChange('air', 'The air', older.air, newer.air),
		...fieldsChange('kit', 'Tape and meter', older.kit, newer.kit),
		...fieldsChange('target', 'The target', older.target, newer.target),
		...otherKeys(older, newer),
	];
}
