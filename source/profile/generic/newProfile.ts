import {isLfe} from '../channels.ts';
import {currentFormat} from '../format.ts';
import type {LengthUnit, Profile} from '../types.ts';
import {type GenericBassProcessor, genericBassProcessors} from './bassProcessors.ts';
import {type LayoutName, layouts} from './layouts.ts';
import {type GenericReceiver, genericReceivers} from './receivers.ts';

export type NewProfile = {
	readonly name: string;
	/** ISO date, such as 2026-04-18. */
	readonly date: string;
	readonly layout: LayoutName;
	/** The profile's name where not given. */
	readonly roomName?: string;
	readonly lengthUnit?: LengthUnit;
	readonly receiver?: GenericReceiver;
	readonly bassProcessor?: GenericBassProcessor;
	/** Number of subs on the low-frequency channel; one where the layout has such a channel. At most the processor's outputs, or 4. */
	readonly subs?: number;
	/** Number of seats in the row; the first is the reference seat. */
	readonly seats?: number;
};

/**
The smallest sound profile for a layout: channels, subs and seats, and what a generic receiver can take. Nothing measured.

@throws {RangeError} If subs are wanted without a low-frequency channel or beyond four, or seats outside 1 to 20.
*/
export function newProfile(wanted: NewProfile): Profile {
	const channels = layouts[wanted.layout].map(id => ({id}));
	const lfe = layouts[wanted.layout].find(id => isLfe(id));
	const subs = wanted.subs ?? (lfe ? 1 : 0);
	const seats = wanted.seats ?? 1;
	if (subs > 0 && !lfe)
		throw new RangeError(
			`subs must be 0, got ${subs}: the layout ${wanted.layout} has no low-frequency channel`,
		);
	if (!Number.isInteger(subs) || subs < 0 || subs > 4)
		throw new RangeError(`subs must be 0 to 4, got ${subs}`);
	if (!Number.isInteger(seats) || seats < 1 || seats > 20)
		throw new RangeError(`seats must be 1 to 20, got ${seats}`);
	// Who reads feet has a tape in feet and buys wire by gauge, until the kit says otherwise.
	const unit = wanted.lengthUnit ?? 'm';
	const processor = wanted.bassProcessor && genericBassProcessors[wanted.bassProcessor];
	return {
		format: currentFormat,
		name: wanted.name,
		date: wanted.date,
		lengthUnit: unit,
		kit: {tapeShownIn: unit, wireSystem: unit.startsWith('ft') ? 'awg' : 'metric'},
		room: {name: wanted.roomName ?? wanted.name},
		seats: Array.from({length: seats}, (_, index) => ({
			id: `seat${index + 1}`,
			name: index === 0 ? 'Reference seat' : `Seat ${index + 1}`,
			...(index === 0 ? {reference: true} : {}),
		})),
		channels,
		...(lfe && subs > 0
			? {
					subs: Array.from({length: subs}, (_, index) => ({
						id: `sub${index + 1}`,
						name: subs === 1 ? 'Subwoofer' : `Subwoofer ${index + 1}`,
						fedBy: lfe,
						...(processor ? {processorOutput: processor.outputs[index]!} : {}),
					})),
				}
			: {}),
		...(wanted.receiver
			? {receiver: structuredClone(genericReceivers[wanted.receiver]) as Profile['receiver']}
			: {}),
		...(processor ? {bassProcessor: structuredClone(processor)} : {}),
		tape: [],
		meter: [],
		settings: [],
	};
}
