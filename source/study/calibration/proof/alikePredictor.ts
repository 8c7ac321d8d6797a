import type {BoxState} from '../../../profile/ask/boxState.ts';
import {lineOf} from '../../../profile/ask/lines.ts';
import type {Profile} from '../../../profile/types.ts';
import {groupGain, isChangedAlike} from './alike.ts';
import type {Predictor} from './forecast.ts';
import {cleanLevel, meanOwnLevel, meterView} from './ownLevels.ts';
import type {Taken} from './rounds.ts';

/** Boxes make a delay to their steps: so far off two sources of noise about a crossover still add up alike, ms. */
const noiseMs = 0.25;

/**
Forecast for speakers and subs that sounded together with noise, as the verification of the blend reads them: the level
that was read under settings which differ from those intended by nothing but a gain common to all.

@returns `undefined` where no reading was taken under such settings.
*/
export function alikePredictor(
	profile: Profile,
	key: string,
	taken: readonly Taken[],
	intended: BoxState,
): Predictor | undefined {
	const {atoms, seat, weighting, signal} = taken.at(-1)!;
	const lines = atoms.map(atom => lineOf(profile, atom));
	const isSameCrossover = ({state}: Taken) =>
		lines.every(
			({channel}) =>
				state.channels.get(channel)?.crossoverHertz === intended.channels.get(channel)?.crossoverHertz,
		);
	const own = meanOwnLevel(
		taken.flatMap(one => {
			if (!isSameCrossover(one) || !isChangedAlike(lines, one.state, intended, noiseMs)) return [];
			const clean = cleanLevel(profile, one);
			return clean ? [{...clean, levelDb: clean.levelDb - groupGain(one.state, lines)}] : [];
		}),
	);
	if (!own) return undefined;
	const shown = meterView(profile, {seat, weighting, signal});
	return {
		key,
		atoms,
		seat,
		weighting,
		signal,
		shows: 'blend',
		sigmaDb: own.sigmaDb,
		level: state => shown(own.levelDb + groupGain(state, lines)),
	};
}
