import type {Profile} from '../../../profile/types.ts';
import {standingOf} from '../../../study/comparison/sheetData.ts';
import {adjustNetwork} from '../../../study/survey/adjust.ts';
import type {Positions, WiringResult} from '../../../study/wiring/result.ts';
import {wiring} from '../../../study/wiring/wiring.ts';
import {solutionOf} from '../solution.ts';

// Profiles are never changed in place, so what was found for one stays true for as long as it exists.
const places = new WeakMap<Profile, Positions>();
const results = new WeakMap<Profile, WiringResult>();

/** Where things stand, as far as the tape ties them to the walls. */
export function positionsOf(profile: Profile): Positions {
	const found = places.get(profile) ?? standingOf(adjustNetwork(profile), solutionOf(profile)).positions;
	places.set(profile, found);
	return found;
}

/** Cables with their lengths, what to buy, outlets, order and remarks. Computed once for a profile. */
export function wiringOf(profile: Profile): WiringResult {
	const found = results.get(profile) ?? wiring(profile, positionsOf(profile));
	results.set(profile, found);
	return found;
}
