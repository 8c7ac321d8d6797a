import {proofLimits} from '../../../profile/practice.ts';
import type {Profile, Signal} from '../../../profile/types.ts';

/** 95 % of a normal distribution, two-sided. */
const ninetyFive = 1.96;

/**
Largest residual that still counts as met, dB: what a meter that never stands at the same millimetre allows, or what is
asked for or uncertain where that is more.

@param sigmaDb - Standard uncertainty of the residual by meter and forecast, without the meter's place.
*/
export function limitOf(profile: Pick<Profile, 'target' | 'kit'>, signal: Signal, sigmaDb: number): number {
	const limits = profile.kit?.meterPlaceMarked ? proofLimits.marked : proofLimits.unmarked;
	const usual = signal.kind === 'tone' ? limits.toneDb : limits.noiseDb;
	return Math.max(profile.target?.toleranceDb ?? 0, usual, ninetyFive * sigmaDb);
}

/** What the meter's place adds to the uncertainty of a residual, dB. */
export function placeSigmaDb(signal: Signal): number {
	return signal.kind === 'tone' ? proofLimits.placeSigma.toneDb : proofLimits.placeSigma.noiseDb;
}
