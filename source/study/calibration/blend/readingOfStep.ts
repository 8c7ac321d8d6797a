import type {MeterReading} from '../../../profile/types.ts';
import type {BlendStep} from './steps.ts';

/**
What a reading of a step says beside its level and the settings in force: what sounded, what was changed for it, and what it
is for.

@param subs - All of them: they are turned where the step does not name some.
*/
export function readingOfStep(
	{source, seat, signal, added, part, playInto}: BlendStep,
	subs: readonly string[],
): Pick<
	MeterReading,
	| 'source'
	| 'seat'
	| 'signal'
	| 'round'
	| 'addedDelayMs'
	| 'addedDelaySources'
	| 'invertedSources'
	| 'blendPart'
> {
	const {delayMs, isTurned, subs: changed} = added;
	const hasMains = playInto.some(id => [source].flat().includes(id));
	return {
		source,
		seat,
		signal,
		round: 'first',
		...(delayMs === 0 ? {} : {addedDelayMs: delayMs}),
		...(delayMs === 0 || !changed ? {} : {addedDelaySources: [...changed]}),
		...(isTurned ? {invertedSources: [...(changed ?? subs)]} : {}),
		...(signal.kind === 'pink' && hasMains
			? {blendPart: part === 'search' ? ('search' as const) : ('verification' as const)}
			: {}),
	};
}
