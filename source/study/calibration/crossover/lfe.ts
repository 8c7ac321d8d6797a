import {lfeTopHertz} from '../../../profile/practice.ts';

/**
Low-pass for the LFE channel: the lowest choice that keeps all of its content, or else the highest.

@param choicesHertz - Shape (n), hertz.
@returns Hertz, or undefined without choices.
@see ITU-R BS.775-3, Annex 7 (known as a quotation): LFE content lies at 20–120 Hz.
*/
export function lfeLowPass(choicesHertz: readonly number[]): number | undefined {
	if (choicesHertz.length === 0) return undefined;
	const keeping = choicesHertz.filter(hertz => hertz >= lfeTopHertz);
	return keeping.length > 0 ? Math.min(...keeping) : Math.max(...choicesHertz);
}
