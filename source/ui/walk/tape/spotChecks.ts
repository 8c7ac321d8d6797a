import {nameOf} from '../../../profile/names.ts';
import type {Profile, TapeReading} from '../../../profile/types.ts';
import {formatLength} from '../../../profile/units/length.ts';
import {isOfThisRound, startedFrom} from '../carry.ts';
import {lengthUnitOf} from '../lengthUnits.ts';
import {walkingOrder} from '../order.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {tapePrompt} from './tapePrompt.ts';

/** Lengths read again to see whether the rest stands as it stood. */
const mostChecks = 2;

/**
Two lengths that came along from an older round, read once more: of speakers that are far apart in the walk, so that a
seat that has moved shows in one of them.
*/
export function spotChecks(profile: Profile, seat: string): Prompt<Profile>[] {
	const since = startedFrom(profile);
	if (since === undefined) return [];
	const unit = lengthUnitOf(profile);
	const lengths = (source: string): TapeReading[] =>
		(profile.tape ?? []).filter(
			({from, to, setAside}) =>
				!setAside && ((from === source && to === seat) || (from === seat && to === source)),
		);
	const cameAlong = walkingOrder(profile).filter(source =>
		lengths(source).some(reading => !isOfThisRound(profile, reading)),
	);
	const chosen = cameAlong.filter((_, at) => at === 0 || at === Math.floor(cameAlong.length / 2));
	return chosen.slice(0, mostChecks).map(source => {
		const old = lengths(source).find(reading => !isOfThisRound(profile, reading))!;
		const prompt = tapePrompt(profile, {
			id: `tape:check:${source}`,
			stop: 'tape',
			from: source,
			to: seat,
			question: `Spot check: ${nameOf(profile, source)} to ${nameOf(profile, seat)}`,
			about: `${formatLength(old.metres, unit)} on ${since}. Is it still there?`,
			explain: 'Where it reads otherwise, either it or the seat has moved; then you are asked which.',
			row: source,
		});
		return {
			...prompt,
			isOffered: true,
			isAnswered: lengths(source).some(reading => isOfThisRound(profile, reading)),
		};
	});
}
