import type {Profile} from '../../../profile/types.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {valuePrompt} from '../prompt/single.ts';
import {freeId} from './cables.ts';
import {type Rating, type RatingReading, ratingText, readRating} from './rating.ts';

export type Outlet = NonNullable<NonNullable<Profile['wiring']>['outlets']>[number];

const mostOutlets = 100;
export const mainsCaution =
	'Read the plate; open nothing. Work on mains: local codes, a licensed electrician.';

export const outletsOf = (profile: Profile): readonly Outlet[] => profile.wiring?.outlets ?? [];

/** The rating of every strip or uninterruptible supply, and of one more. */
export function outletPrompts(profile: Profile): Prompt<Profile>[] {
	const outlets = outletsOf(profile);
	// Mains in countries that tape in feet and in those that do not; the plate tells better.
	const usualVolts = profile.lengthUnit === 'ft' || profile.lengthUnit === 'ft-in' ? 120 : 230;
	const ratings = outlets.map((outlet, index) =>
		ratingPrompt(index, `${outlet.name}: its rating`, usualVolts, ratingText(outlet)),
	);
	if (outlets.length >= mostOutlets) return ratings;
	const question =
		outlets.length === 0 ? 'Power strip or uninterruptible supply: its rating' : 'One more strip or supply?';
	const more = ratingPrompt(outlets.length, question, usualVolts, undefined);
	return [...ratings, {...more, isAnswered: outlets.length > 0}];
}

function ratingPrompt(
	index: number,
	question: string,
	usualVolts: number,
	shown: string | undefined,
): Prompt<Profile> {
	return valuePrompt<Profile, RatingReading>({
		id: `wiring:outlet:${index + 1}`,
		stop: 'wiring',
		question,
		about: `From its plate: 10 A, 2300 W or 1500 VA. At ${usualVolts} V unless typed with it: 10 A 230 V.`,
		explain: 'What hangs on it is added up against four fifths of it, since the load lasts for hours.',
		caution: mainsCaution,
		unit: 'A, W or VA',
		shown,
		read: readRating,
		put: (subject, {rating}) => withRating(subject, index, rating, usualVolts),
	});
}

function withRating(profile: Profile, index: number, rating: Rating, usualVolts: number): Profile {
	const outlets = outletsOf(profile);
	const old = outlets[index];
	const isSupply = rating.limitVoltAmperes !== undefined;
	const limits = {limitAmperes: undefined, limitWatts: undefined, limitVoltAmperes: undefined};
	const next: Outlet = old
		? {...old, ...limits, ...rating}
		: {
				id: freeId(`outlet${index + 1}`, new Set(outlets.map(({id}) => id))),
				name: `${isSupply ? 'Uninterruptible supply' : 'Strip'} ${index + 1}`,
				kind: isSupply ? 'ups' : 'strip',
				volts: usualVolts,
				...rating,
			};
	return {
		...profile,
		wiring: {...profile.wiring, outlets: [...outlets.slice(0, index), next, ...outlets.slice(index + 1)]},
	};
}
