import type {Control} from '../../profile/ask/boxes.ts';
import {type JointRounding, jointRounding} from '../../science/numeric/jointRounding.ts';

/** One line of the receiver that drives a speaker. */
export type SteppedLine = {
	readonly id: string;
	readonly exact: number;
	readonly control: Control;
	readonly current?: number;
};

/** Everything behind one output of the bass processor, or everything that hangs on the receiver's output directly. */
export type Branch = {
	/** The processor's output; absent where directly connected, and then nothing can be set apart. */
	readonly output?: string;
	/** What receiver and processor together should make, in the receiver's domain. */
	readonly exact: number;
	readonly control?: Control;
};

/** An LFE output of the receiver with its branches; at least one. */
export type Feed = {
	readonly id: string;
	readonly control: Control;
	readonly current?: number;
	readonly branches: readonly Branch[];
};

export type Shared = {
	/** By line and feed id: as computed and as stepped. */
	readonly receiver: ReadonlyMap<string, {readonly exact: number; readonly stepped: number}>;
	readonly outputs: ReadonlyMap<string, {readonly exact: number; readonly stepped: number}>;
	/** Total of both boxes minus what was wanted, by line id, output, or feed id for direct branches. */
	readonly errors: ReadonlyMap<string, number>;
	readonly rounding: JointRounding;
};

/**
What the processor does where the receiver can do the rest:
- `least`: its smallest value, for delays, since every delay starts at nothing;
- `cut`: nothing on the branch that needs most, less on the others, for gains, since a boost costs headroom.
*/
export type Rest = 'least' | 'cut';

/** Steps of the receiver's control tried on either side of the wanted value. */
const stepsAround = 2;

/**
Shares what subs need between receiver and processor, and rounds all lines and branches jointly.

A feed with one direct branch is a line like any other. Where a processor stands behind a feed, the receiver's value is
common to its branches and the processor sets them apart; the receiver's points about the wanted value are tried, and
for each the rest is rounded exactly.

@param indifference - Errors that differ by no more count as equal, in the unit of the values.
*/
export function shareAndRound(
	lines: readonly SteppedLine[],
	feeds: readonly Feed[],
	rest: Rest,
	indifference: number,
): Shared {
	const plain = feeds.filter(isPlain).map(({id, control, current, branches}) => ({
		id,
		control,
		current,
		exact: branches[0]!.exact,
	}));
	const shared = feeds.filter(feed => !isPlain(feed));
	const wanted = shared.map(feed => wantedOfReceiver(feed, rest));
	const all = [...lines, ...plain];
	const tried = combinations(shared.map((feed, index) => pointsAround(feed.control, wanted[index]!))).map(
		values => {
			const items = [
				...all.map(({exact, control, current}) => ({exact, ...control, current})),
				...shared.flatMap((feed, index) => feed.branches.map(branch => branchItem(branch, values[index]!))),
			];
			const rounding = jointRounding(items, indifference);
			const away = values.reduce((sum, value, index) => sum + Math.abs(value - wanted[index]!), 0);
			return {wanted, values, rounding, away: away + Math.abs(rounding.offset)};
		},
	);
	const least = Math.min(...tried.map(({rounding}) => rounding.worstPairwiseError));
	const good = tried.filter(({rounding}) => rounding.worstPairwiseError <= least + indifference + 1e-9);
	const best = good.reduce((nearest, other) => (other.away < nearest.away - 1e-9 ? other : nearest));
	return gathered(all, shared, best);
}

function gathered(
	lines: readonly SteppedLine[],
	feeds: readonly Feed[],
	{wanted, values, rounding}: {wanted: number[]; values: number[]; rounding: JointRounding},
): Shared {
	const receiver = new Map<string, {exact: number; stepped: number}>();
	const outputs = new Map<string, {exact: number; stepped: number}>();
	const errors = new Map<string, number>();
	let index = 0;
	for (const {id, exact} of lines) {
		const stepped = rounding.stepped[index++]!;
		receiver.set(id, {exact, stepped});
		errors.set(id, stepped - exact);
	}

	for (const [feedIndex, feed] of feeds.entries()) {
		const value = values[feedIndex]!;
		receiver.set(feed.id, {exact: wanted[feedIndex]!, stepped: value});
		for (const {output, exact} of feed.branches) {
			const stepped = rounding.stepped[index++]!;
			if (output !== undefined) outputs.set(output, {exact: exact - value, stepped});
			errors.set(output ?? feed.id, value + stepped - exact);
		}
	}

	return {receiver, outputs, errors, rounding};
}

function isPlain({branches}: Feed): boolean {
	return branches.length === 1 && branches[0]!.control === undefined;
}

/** A direct branch behind a shared feed gets what the receiver does, no more and no less. */
function branchItem({exact, control}: Branch, receiverValue: number) {
	return {exact: exact - receiverValue, ...(control ?? {step: 1e-9, minimum: 0, maximum: 0})};
}

function wantedOfReceiver({branches}: Feed, rest: Rest): number {
	const needs = branches.map(({exact, control}) => {
		const least = control?.minimum ?? 0;
		const nothing = control ? Math.min(control.maximum, Math.max(control.minimum, 0)) : 0;
		return exact - (rest === 'least' ? least : nothing);
	});
	return rest === 'least' ? Math.min(...needs) : Math.max(...needs);
}

function pointsAround({step, minimum, maximum}: Control, wanted: number): number[] {
	const last = Math.round((maximum - minimum) / step);
	const middle = Math.min(last, Math.max(0, Math.round((wanted - minimum) / step)));
	const points: number[] = [];
	for (let k = Math.max(0, middle - stepsAround); k <= Math.min(last, middle + stepsAround); k++) {
		points.push(Number((minimum + k * step).toPrecision(12)));
	}

	return points;
}

function combinations(choices: readonly number[][]): number[][] {
	return choices.reduce<number[][]>(
		(all, values) => all.flatMap(others => values.map(value => [...others, value])),
		[[]],
	);
}
