import type {MeterReading} from '../../../profile/types.ts';
import type {BlendAction} from './actions.ts';

/** What was changed for a reading on top of the set that stands. */
export type Added = {
	readonly delayMs: number;
	readonly isTurned: boolean;
	/** Subs that it concerns; all where absent. */
	readonly subs?: readonly string[];
};

/**
- `tone`, `search`: what a blend with the fronts is found from;
- `before`, `after`: noise that verifies it;
- `pair`, `pair before`, `pair after`: the same of a change between subs.
*/
export type BlendPart = 'tone' | 'search' | 'before' | 'after' | 'pair' | 'pair before' | 'pair after';

/** One reading that the blend asks for, as data for a screen or a list. */
export type BlendStep = {
	/** Stable: part, what sounds, signal, what was added, and which reading of them. */
	readonly id: string;
	readonly part: BlendPart;
	/** Goes into the meter reading as it is. */
	readonly source: MeterReading['source'];
	readonly seat: string;
	readonly signal: NonNullable<MeterReading['signal']>;
	/** Channels that the signal is played into. */
	readonly playInto: readonly string[];
	readonly added: Added;
	/** Against the set that stands, for this reading. */
	readonly actions: readonly BlendAction[];
	/** First, second … reading of it. */
	readonly nth: number;
	readonly isTaken: boolean;
};

/** Stable name of a step; two steps with one id are one reading. */
export function stepId({part, source, signal, added, nth}: Omit<BlendStep, 'id'>): string {
	const tone = signal.kind === 'tone' ? ` ${signal.hertz}` : '';
	const delay = added.delayMs === 0 ? '' : ` ${added.delayMs}`;
	const which = added.subs && (delay !== '' || added.isTurned) ? ` ${added.subs.join('+')}` : '';
	return `${part} ${[source].flat().join('+')}${tone}${delay}${added.isTurned ? ' turned' : ''}${which} ${nth}`;
}

/** Steps between which nothing is touched but the meter, in order. */
export type BlendBlock = Pick<BlendStep, 'part' | 'added' | 'actions'> & {
	readonly steps: readonly BlendStep[];
};

export function blocksOf(steps: readonly BlendStep[]): BlendBlock[] {
	const blocks: Array<BlendBlock & {steps: BlendStep[]}> = [];
	for (const step of steps) {
		const {part, added, actions} = step;
		const last = blocks.at(-1);
		const isSame =
			last?.part === part && last.added.delayMs === added.delayMs && last.added.isTurned === added.isTurned;
		if (isSame) last.steps.push(step);
		else blocks.push({part, added, actions, steps: [step]});
	}

	return blocks;
}
