import type {LengthUnit, Profile} from '../../profile/types.ts';

/** Display unit of a profile; metres where it names none. */
export function lengthUnitOf(profile: Pick<Profile, 'lengthUnit'>): LengthUnit {
	return profile.lengthUnit ?? 'm';
}

/** Units as shown beside a value that is being typed. */
export const unitWords: Readonly<Record<LengthUnit, string>> = {
	'ft-in': 'feet and inches',
	ft: 'feet',
	m: 'metres',
	cm: 'centimetres',
};

/** How the same length is typed in each unit. */
export const typedExamples: Readonly<Record<LengthUnit, string>> = {
	'ft-in': '9-4 1/2 or 9 4.5 is 9′ 4 1/2″; 9 alone is nine feet; 112.5in and 2.86m work too.',
	ft: '9.38 is 9.38 ft; 9-4 1/2 and 2.86m work too.',
	m: '2.86 or 2,86; 286cm and 9-4 1/2 work too.',
	cm: '286; 2.86m and 9-4 1/2 work too.',
};
