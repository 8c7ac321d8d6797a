import {referenceSeat} from '../../../profile/ask/seats.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import {usualSubBand} from '../../../profile/practice.ts';
import type {MeterReading, Profile} from '../../../profile/types.ts';
import {briefNoise, noiseCaution} from '../meter/found.ts';
import {levelPrompt, weightingOf} from '../meter/levelPrompt.ts';
import {keyOf} from '../meter/meterPrompt.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {provenSet} from '../proof/proofOf.ts';
import {solutionOf} from '../solution.ts';

/**
All subs together with the settings typed in: how they add up is not known before. Comes by itself after Dial-in while a
sum in phase is only assumed.
*/
export function togetherPrompts(profile: Profile): Prompt<Profile>[] {
	const set = provenSet(profile);
	const subs = subsOf(profile).map(({id}) => id);
	if (!set || subs.length < 2) return [];
	const seat = referenceSeat(profile);
	const isOwn = ({round, source, signal, addedDelayMs, invertedSources, inForce}: MeterReading) =>
		round === 'first' &&
		keyOf(source) === keyOf(subs) &&
		signal?.kind !== 'tone' &&
		addedDelayMs === undefined &&
		!invertedSources?.length &&
		inForce === set.id;
	const isAssumed = solutionOf(profile).remarks.some(({code}) => code === 'coherent-sum-assumed');
	if (!isAssumed && !profile.meter?.some(isOwn)) return [];
	const prompt = levelPrompt(profile, {
		id: 'bass:together',
		stop: 'bass',
		question: `All subs together at ${seat.name}`,
		about: `Noise on all subs at once, with the settings typed in. Meter at ear height, ${weightingOf(profile)}, slow.`,
		explain:
			'Until now a sum in phase is assumed. What they really make, with these delays, moves their level by up to 6 dB.',
		caution: noiseCaution,
		briefCaution: briefNoise,
		row: 'LFE1',
		isOwn,
		made: subject => ({
			source: subs,
			seat: seat.id,
			signal: usualSubBand,
			round: 'first',
			inForce: provenSet(subject)?.id ?? set.id,
		}),
	});
	return [{...prompt, isOffered: true}];
}
