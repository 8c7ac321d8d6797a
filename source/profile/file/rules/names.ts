import {planes} from '../../planes.ts';
import type {Profile} from '../../types.ts';
import type {Found, Path} from '../json/problem.ts';

/** Names that mean something of their own in readings. */
const reserved: ReadonlySet<string> = new Set<string>(['screen', 'background', ...planes]);

/** Ids given twice, ids that clash with another kind of thing, and the reference seat. */
export function findNameProblems(profile: Profile): Found[] {
	const found: Found[] = [];
	const takenBy = new Map<string, string>();
	const add = (id: string, path: Path, kind: string) => {
		const other = takenBy.get(id);
		if (reserved.has(id)) {
			found.push({
				path,
				value: id,
				expected: 'an id that is not a tape end or source already',
				remedy: `“${id}” has a meaning of its own. Choose another id.`,
			});
		} else if (other === undefined) {
			takenBy.set(id, kind);
		} else {
			const expected = other === kind ? `each ${kind} once` : 'one thing for each id';
			const remedy =
				other === kind
					? 'Take one of them out, or correct its id.'
					: `A ${other} has this id already. Choose another one.`;
			found.push({path, value: id, expected, remedy});
		}
	};

	for (const [index, {id}] of profile.channels.entries()) add(id, ['channels', index, 'id'], 'channel');
	for (const [index, {id}] of (profile.subs ?? []).entries()) add(id, ['subs', index, 'id'], 'sub');
	for (const [index, {id}] of profile.seats.entries()) add(id, ['seats', index, 'id'], 'seat');

	const references = profile.seats.filter(({reference}) => reference === true).map(({id}) => id);
	if (references.length === 0) {
		found.push({
			path: ['seats'],
			value: 'no reference seat',
			expected: 'exactly one reference seat',
			remedy: 'Add "reference": true to the seat that the settings are made for.',
		});
	} else if (references.length > 1) {
		found.push({
			path: ['seats'],
			value: `${references.length} reference seats: ${references.slice(0, 5).join(', ')}`,
			expected: 'exactly one reference seat',
			remedy: 'Leave "reference": true at one of them.',
		});
	}

	return found;
}
