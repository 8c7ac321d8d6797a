import {newProfile} from '../../source/profile/generic/newProfile.ts';
import type {Profile} from '../../source/profile/types.ts';
import {nextReadings} from '../../source/study/placement/guidedTape.ts';
import {adjustNetwork} from '../../source/study/survey/adjust.ts';
import type {BareRoom} from './world.ts';

// What the rooms know of the product's tape network; everything else of the product is in `product.ts`.

/** A 5.1 layout of which nothing is measured. */
export const surveyProfile = (room: BareRoom): Profile => ({
	...newProfile({name: room.seed, date: '2026-04-18', layout: '5.1', subs: 1}),
	kit: {tapeStepMetres: 0.001},
});

/** Readings to take next. */
export const nextTape = (profile: Profile, count: number) =>
	nextReadings(profile, count, adjustNetwork(profile));

/** Each accusation with the places of all readings that it names: the likeliest, and those that may be wrong instead. */
export const accusedReadings = (profile: Profile): ReadonlyArray<{readonly indices: readonly number[]}> =>
	adjustNetwork(profile).suspects.map(({index, alternatives}) => ({indices: [index, ...alternatives]}));

/** Seats, speakers, subs and screen whose readings are said to be checked. */
export const checkedThings = (profile: Profile): ReadonlySet<string> =>
	new Set(adjustNetwork(profile).points.flatMap(({id, isChecked}) => (isChecked ? [id] : [])));
