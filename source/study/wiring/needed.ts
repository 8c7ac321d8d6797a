import {isLfe} from '../../profile/channels.ts';
import type {Profile} from '../../profile/types.ts';
import {readEnd} from './ends.ts';
import type {CableKind} from './result.ts';

export type NeededCable = {
	readonly id: string;
	readonly from: string;
	readonly to: string;
	readonly kind: CableKind;
	/** The channel, sub or box at the far end. */
	readonly serves: string;
};

/**
Every cable that the arrangement needs to make a sound: receiver to each speaker, receiver to processor, processor
or receiver to each sub. Mains and pictures are not derived: the profile does not know their boxes.
*/
export function neededCables(profile: Profile): NeededCable[] {
	const cables: NeededCable[] = profile.channels
		.filter(({id}) => !isLfe(id))
		.map(({id}) => ({
			id: `cable-${id}`,
			from: `receiver/${id}`,
			to: `${id}/speaker`,
			kind: 'speaker' as const,
			serves: id,
		}));
	const viaProcessor = new Set<string>();
	for (const sub of profile.subs ?? []) {
		if (sub.processorOutput === undefined) {
			cables.push({
				id: `cable-${sub.id}`,
				from: `receiver/${sub.fedBy}`,
				to: `${sub.id}/line in`,
				kind: 'line',
				serves: sub.id,
			});
			continue;
		}

		if (!viaProcessor.has(sub.fedBy)) {
			viaProcessor.add(sub.fedBy);
			cables.push({
				id: `cable-processor-${sub.fedBy}`,
				from: `receiver/${sub.fedBy}`,
				to: `processor/in ${sub.fedBy}`,
				kind: 'line',
				serves: 'processor',
			});
		}

		cables.push({
			id: `cable-${sub.id}`,
			from: `processor/${sub.processorOutput}`,
			to: `${sub.id}/line in`,
			kind: 'line',
			serves: sub.id,
		});
	}

	return cables;
}

/** Whether an entered cable does the work of a needed one, in either direction. Terminals at the far box are free words. */
export function serves(needed: NeededCable, cable: {readonly from: string; readonly to: string}): boolean {
	const farBox = readEnd(needed.to).box;
	const isFar = (end: string) => readEnd(end).box === farBox;
	// Speakers and subs may be fed from anywhere (an outboard amplifier); a processor's input must come from its LFE output.
	if (needed.serves !== 'processor') return isFar(cable.to) || isFar(cable.from);
	return (isFar(cable.to) && cable.from === needed.from) || (isFar(cable.from) && cable.to === needed.from);
}
