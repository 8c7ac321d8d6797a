import type {SettingsSet} from '../profile/types.ts';
import type {Dialled, Solution} from './result.ts';

/**
A solution as a set of settings that a profile can keep: exact and stepped values of every channel and output.
What the solution leaves open is left out of the set.

@param solution - Delays in ms, distances in metres, levels in dB.
@param rest - The set's own id and, where known, its name, the time of the decision and the digest of its inputs.
*/
export function toSettingsSet(
	solution: Solution,
	rest: Pick<SettingsSet, 'id' | 'name' | 'decidedAt' | 'inputsHash'>,
): SettingsSet {
	const channels: SettingsSet['channels'] = {};
	for (const {id, timing, trimDb, crossoverHertz, polarityInverted} of solution.channels) {
		const setting = {
			...(timing?.kind === 'delay' ? {delayMs: kept(timing)} : {}),
			...(timing?.kind === 'distance' ? {distanceMetres: kept(timing)} : {}),
			...(trimDb ? {trimDb: kept(trimDb)} : {}),
			...(crossoverHertz === undefined ? {} : {crossoverHertz}),
			...(polarityInverted === undefined ? {} : {polarityInverted}),
		};
		if (Object.keys(setting).length > 0) channels[id] = setting;
	}

	const outputs: NonNullable<SettingsSet['outputs']> = {};
	for (const {id, delayMs, gainDb, polarityInverted} of solution.outputs) {
		const setting = {
			...(delayMs ? {delayMs: kept(delayMs)} : {}),
			...(gainDb ? {gainDb: kept(gainDb)} : {}),
			...(polarityInverted === undefined ? {} : {polarityInverted}),
		};
		if (Object.keys(setting).length > 0) outputs[id] = setting;
	}

	const {masterVolumeDb, lfeLowPassHertz} = solution;
	return {
		...rest,
		origin: 'solved',
		...(masterVolumeDb === undefined ? {} : {masterVolumeDb}),
		...(lfeLowPassHertz === undefined ? {} : {lfeLowPassHertz}),
		channels,
		...(Object.keys(outputs).length > 0 ? {outputs} : {}),
	};
}

function kept({exact, stepped}: Dialled): {exact: number; stepped: number} {
	return {exact, stepped};
}
