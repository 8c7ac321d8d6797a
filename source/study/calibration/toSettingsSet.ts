import type {SettingsSet} from '../../profile/types.ts';
import type {Dialled, Solution} from './result.ts';

/**
A solution as a set of settings to store.

@param options - The set's id, when it was decided (ISO 8601 with offset), and the digest of what it was computed from.
*/
export function toSettingsSet(
	solution: Solution,
	options: {
		readonly id: string;
		readonly name?: string;
		readonly decidedAt?: string;
		readonly inputsHash?: string;
	},
): SettingsSet {
	const channels: SettingsSet['channels'] = {};
	for (const {id, timing, trimDb, crossoverHertz, polarityInverted} of solution.channels) {
		channels[id] = {
			...(timing?.kind === 'delay' && {delayMs: both(timing)}),
			...(timing?.kind === 'distance' && {distanceMetres: both(timing)}),
			...(trimDb && {trimDb: both(trimDb)}),
			...(crossoverHertz !== undefined && {crossoverHertz}),
			...(polarityInverted !== undefined && {polarityInverted}),
		};
	}

	const outputs: NonNullable<SettingsSet['outputs']> = {};
	for (const {id, delayMs, gainDb, polarityInverted} of solution.outputs) {
		outputs[id] = {
			...(delayMs && {delayMs: both(delayMs)}),
			...(gainDb && {gainDb: both(gainDb)}),
			...(polarityInverted !== undefined && {polarityInverted}),
		};
	}

	const {masterVolumeDb, lfeLowPassHertz} = solution;
	return {
		id: options.id,
		...(options.name !== undefined && {name: options.name}),
		origin: 'solved',
		...(options.decidedAt !== undefined && {decidedAt: options.decidedAt}),
		...(options.inputsHash !== undefined && {inputsHash: options.inputsHash}),
		...(masterVolumeDb !== undefined && {masterVolumeDb: rounded(masterVolumeDb)}),
		...(lfeLowPassHertz !== undefined && {lfeLowPassHertz}),
		channels,
		...(solution.outputs.length > 0 && {outputs}),
	};
}

function both({exact, stepped}: Dialled): {exact: number; stepped: number} {
	return {exact: rounded(exact), stepped};
}

/** Digits below a ten-thousandth of a decibel, millisecond or metre say nothing and make files hard to compare. */
function rounded(value: number): number {
	return Number(value.toFixed(4));
}
