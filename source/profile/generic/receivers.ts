import {everyTenHertz} from '../practice.ts';
import type {Receiver} from '../types.ts';
import {metresPerFoot} from '../units/lengthFormat.ts';

// Invented, and even on purpose: no receiver was copied. Kit corrects them to what the real one shows.
const crossover: Receiver['crossover'] = {
	choicesHertz: [...everyTenHertz],
	scope: 'per channel',
	fullRange: true,
	lfeLowPassChoicesHertz: [80, 100, 120, 150],
};
const trim: Receiver['trim'] = {stepDb: 0.5, minimumDb: -10, maximumDb: 10};
const common = {trim, crossover, subOutputs: 2} as const;

/** Receivers that stand for many: what they take, invented. */
export const genericReceivers = {
	'fine-metric': {
		...common,
		name: 'Distances in centimetre steps',
		timing: {kind: 'distance', shownIn: 'm', stepMetres: 0.01, minimumMetres: 0, maximumMetres: 20},
	},
	'coarse-metric': {
		...common,
		name: 'Distances in 10 cm steps',
		trim: {...trim, stepDb: 1},
		timing: {kind: 'distance', shownIn: 'm', stepMetres: 0.1, minimumMetres: 0, maximumMetres: 12},
	},
	'fine-feet': {
		...common,
		name: 'Distances in tenths of a foot',
		timing: {
			kind: 'distance',
			shownIn: 'ft',
			stepMetres: metresPerFoot / 10,
			minimumMetres: 0,
			maximumMetres: 65 * metresPerFoot,
		},
	},
	'coarse-feet': {
		...common,
		name: 'Distances in whole feet',
		trim: {...trim, stepDb: 1},
		timing: {
			kind: 'distance',
			shownIn: 'ft',
			stepMetres: metresPerFoot,
			minimumMetres: metresPerFoot,
			maximumMetres: 30 * metresPerFoot,
		},
	},
	'fine-delay': {
		...common,
		name: 'Delays in tenths of a millisecond',
		timing: {kind: 'delay', stepMs: 0.1, minimumMs: 0, maximumMs: 50},
	},
	'coarse-delay': {
		...common,
		name: 'Delays in whole milliseconds',
		trim: {...trim, stepDb: 1},
		timing: {kind: 'delay', stepMs: 1, minimumMs: 0, maximumMs: 20},
	},
} as const satisfies Readonly<Record<string, Receiver>>;

export type GenericReceiver = keyof typeof genericReceivers;
export const genericReceiverNames = Object.keys(genericReceivers) as GenericReceiver[];
