import {type Control, control} from '../../../profile/ask/boxes.ts';
import {lineOf} from '../../../profile/ask/lines.ts';
import {finding} from '../../../profile/finding.ts';
import type {Profile} from '../../../profile/types.ts';
import {median} from '../../../science/numeric/statistics.ts';
import type {SteppedLine} from '../steps.ts';
import type {LevelFinding} from './facts.ts';
import type {SubNeed} from './subs.ts';

/** What all speakers need in common, dB: 0 where each reaches the target by its own trim. */
export function commonNeedDb(lines: readonly SteppedLine[]): number {
	const isReached = lines.every(
		({exact, control: {step, minimum, maximum}}) =>
			exact >= minimum - step / 2 && exact <= maximum + step / 2,
	);
	return isReached ? 0 : median(lines.map(({exact}) => exact));
}

/**
Needs that the entries can make. A sub beyond them is far off: one knob at the sub is turned, rather than every other
channel raised or lowered to meet it.

@param own - The receiver's trim.
@param commonDb - What the master volume makes up for all, dB.
@returns Needs held to what receiver and processor reach, and an instruction for each sub that was beyond.
*/
export function reachedNeeds(
	profile: Profile,
	needs: ReadonlyMap<string, SubNeed>,
	own: Control,
	commonDb: number,
): {readonly needs: ReadonlyMap<string, SubNeed>; readonly remarks: readonly LevelFinding[]} {
	const gain = profile.bassProcessor?.gain;
	const remarks: LevelFinding[] = [];
	const reached = new Map(
		[...needs].map(([id, need]) => {
			const behind =
				gain && lineOf(profile, id).output !== undefined
					? control(gain.stepDb, gain.minimumDb, gain.maximumDb)
					: {step: 0, minimum: 0, maximum: 0};
			const wantedDb = need.gainDb - commonDb;
			const least = own.minimum + behind.minimum;
			const most = own.maximum + behind.maximum;
			if (wantedDb >= least - own.step / 2 && wantedDb <= most + own.step / 2) return [id, need];
			const heldDb = Math.min(most, Math.max(least, wantedDb));
			remarks.push(finding('problem', 'sub-far-off', [id], {turnDb: wantedDb, missingDb: wantedDb - heldDb}));
			return [id, {...need, gainDb: heldDb + commonDb}];
		}),
	);
	return {needs: reached, remarks};
}
