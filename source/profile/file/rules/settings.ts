import type {Profile} from '../../types.ts';
import {nameRemedy} from '../json/nearest.ts';
import type {Found} from '../json/problem.ts';

/** Sets of settings with one id twice, and readings taken under a set that is not stored. */
export function findSettingsProblems({settings = [], meter = []}: Profile): Found[] {
	const found: Found[] = [];
	const sets = new Set<string>();
	for (const [index, {id}] of settings.entries()) {
		if (sets.has(id))
			found.push({
				path: ['settings', index, 'id'],
				value: id,
				expected: 'each set once',
				remedy: 'Give one of them another id.',
			});
		sets.add(id);
	}

	for (const [index, {inForce}] of meter.entries()) {
		if (typeof inForce !== 'string' || sets.has(inForce)) continue;
		found.push({
			path: ['meter', index, 'inForce'],
			value: inForce,
			expected: 'the id of a stored set of settings',
			remedy: nameRemedy(inForce, sets),
		});
	}

	return found;
}
