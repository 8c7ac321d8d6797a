import type {Room} from '../types.ts';

type Ceiling = NonNullable<Room['ceiling']>;

/** The height of the ceiling at every place that tells it, from the first wall to the second, metres. */
export function ceilingHeights(ceiling: Ceiling): readonly number[] {
	if (ceiling.kind === 'flat') return [ceiling.heightMetres];
	return ceiling.kind === 'sloped'
		? ceiling.heightsMetres
		: ceiling.places.map(({heightMetres}) => heightMetres);
}

/** Height of the ceiling at the two walls between which it changes, metres; twice the same where it is flat. */
export function ceilingEnds(ceiling: Ceiling): readonly [first: number, second: number] {
	const heights = ceilingHeights(ceiling);
	return [heights[0]!, heights.at(-1)!];
}
