import {mainChannels} from '../../../profile/ask/lines.ts';
import {standingSettings} from '../../../profile/ask/settings.ts';
import type {Profile, SettingsSet} from '../../../profile/types.ts';
import {partsWith} from '../../calibration/parts.ts';
import type {Solution} from '../../calibration/result.ts';
import {solve} from '../../calibration/solve.ts';
import type {NetworkResult} from '../../survey/result.ts';
import {dialledTiming} from './timingSide.ts';

/** Whether what stands for the subs is within a step of what was solved, so that nothing else can have moved them. */
function isBassAsSolved(
	{receiver, bassProcessor, ...profile}: Profile,
	solution: Solution,
	set: SettingsSet,
): boolean {
	const isNear = (dialled: number | undefined, solved: number | undefined, step: number) =>
		dialled === undefined || solved === undefined || Math.abs(dialled - solved) <= step * 1.01;
	const timing = receiver?.timing;
	const step = timing?.kind === 'distance' ? timing.stepMetres : (timing?.stepMs ?? 0);
	return (
		solution.channels.every(
			({id, level, timing: solved}) =>
				level !== undefined || isNear(dialledTiming({receiver, ...profile}, set, id), solved?.stepped, step),
		) &&
		solution.outputs.every(({id, delayMs}) =>
			isNear(set.outputs?.[id]?.delayMs?.stepped, delayMs?.stepped, bassProcessor?.delay.stepMs ?? 0),
		)
	);
}

/**
What a comparison needs of a profile's solution, which is far less than all of it.

Crossovers are not ranked where all are stored; tones are left aside unless what stands for the subs is not what
distances and latencies alone give, so that it may come from them.

@param survey - The adjusted tape network of the profile.
*/
export function solveForDiff(profile: Profile, survey: NetworkResult): Solution {
	const {receiver, meter} = profile;
	const set = standingSettings(profile);
	if (!set) return solve(profile, partsWith(profile, survey));
	const hasCrossovers = mainChannels(profile).every(({id}) => set.channels[id]?.crossoverHertz !== undefined);
	const lean = hasCrossovers &&
		receiver && {
			...receiver,
			crossover: {...receiver.crossover, choicesHertz: receiver.crossover.choicesHertz.slice(0, 1)},
		};
	const solution = solve(
		{
			...profile,
			...(meter && {meter: meter.filter(({signal}) => signal?.kind !== 'tone')}),
			...(lean && {receiver: lean}),
		},
		partsWith({...profile, ...(lean && {receiver: lean})}, survey),
	);
	return isBassAsSolved(profile, solution, set) ? solution : solve(profile, partsWith(profile, survey));
}
