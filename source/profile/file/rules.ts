import type {Profile} from '../types.ts';
import type {Found} from './json/problem.ts';
import {findGearProblems} from './rules/gear.ts';
import {findNameProblems} from './rules/names.ts';
import {findReadingProblems} from './rules/readings.ts';
import {findSettingsProblems} from './rules/settings.ts';

/**
Problems that span several fields: names given twice or to two things, readings of things that do not exist,
ranges the wrong way round. What is merely missing is no problem; it is remarked on where it is needed.
*/
export function findRuleProblems(profile: Profile): Found[] {
	return [
		...findNameProblems(profile),
		...findGearProblems(profile),
		...findReadingProblems(profile),
		...findSettingsProblems(profile),
	];
}
