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
export type BlendBlock = Pick<BlendStep, 'part' | 'added'> & {
	/** What to turn from the block before: first what goes back, then what changes against the set that stands. */
	readonly actions: readonly BlendAction[];
	readonly steps: readonly BlendStep[];
};

const isSameAdded = (one: Added, other: Added) =>
	one.delayMs === other.delayMs &&
	one.isTurned === other.isTurned &&
	((one.delayMs === 0 && !one.isTurned) || one.subs?.join('+') === other.subs?.join('+'));

/** What a block before changed and this one does not: it goes back. */
function backFrom(before: readonly BlendAction[], now: readonly BlendAction[]): BlendAction[] {
	const isAlike = (one: BlendAction, other: BlendAction) =>
		one.box === other.box && one.about === other.about && one.what === other.what;
	return before
		.filter(action => !now.some(other => isAlike(action, other)))
		.map(({box, about, what, from, to, change}) => ({
			box,
			about,
			what,
			...(from !== undefined && to !== undefined && {from: to, to: from}),
			...(change !== undefined && {change: -change}),
		}));
}

export function blocksOf(steps: readonly BlendStep[]): BlendBlock[] {
	const blocks: Array<BlendBlock & {steps: BlendStep[]}> = [];
	for (const step of steps) {
		const {part, added, actions} = step;
		const last = blocks.at(-1);
		if (last?.part === part && isSameAdded(last.added, added)) last.steps.push(step);
		else {
			const back = backFrom(last?.steps[0]?.actions ?? [], actions);
			blocks.push({part, added, actions: [...back, ...actions], steps: [step]});
		}
	}

	return blocks;
}
