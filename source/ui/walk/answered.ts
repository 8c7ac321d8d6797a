import type {Profile} from '../../profile/types.ts';

/** The answer to a question that leaves no other trace in the profile, such as what is usual anyway; undefined where not answered. */
export function walkAnswer(profile: Profile, id: string): string | undefined {
	const known = profile.walk?.answered?.find(entry => entry.startsWith(`${id}:`));
	return known?.slice(id.length + 1);
}

/** The profile with such an answer, in place of an earlier one to the same question. */
export function withAnswer(profile: Profile, id: string, answer: string): Profile {
	const others = (profile.walk?.answered ?? []).filter(entry => !entry.startsWith(`${id}:`));
	return {...profile, walk: {...profile.walk, answered: [...others, `${id}:${answer}`]}};
}

/** The profile without such an answer: the question is open again. */
export function withoutAnswer(profile: Profile, id: string): Profile {
	const {answered} = profile.walk ?? {};
	if (!answered?.some(entry => entry.startsWith(`${id}:`))) return profile;
	return {
		...profile,
		walk: {...profile.walk, answered: answered.filter(entry => !entry.startsWith(`${id}:`))},
	};
}
