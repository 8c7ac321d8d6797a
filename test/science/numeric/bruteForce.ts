import type {GridItem} from '../../../source/science/numeric/jointRounding.ts';

export type Judged = {readonly worst: number; readonly together: number; readonly squares: number};

/** Quality of stepped values, by definition: worst pairwise error, most within one step, sum of squares about the mean. */
export function judge(items: readonly GridItem[], stepped: readonly number[]): Judged {
	const errors = stepped.map((value, index) => value - items[index]!.exact);
	const step = Math.max(...items.map(item => item.step));
	const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length;
	return {
		worst: Math.max(...errors) - Math.min(...errors),
		together: Math.max(
			...errors.map(
				from => errors.filter(error => error >= from - 1e-6 && error <= from + step + 1e-6).length,
			),
		),
		squares: errors.reduce((sum, error) => sum + (error - mean) ** 2, 0),
	};
}

/** Every combination of what limited controls can show. */
export function* combinationsOf(items: readonly GridItem[]): Generator<number[]> {
	const [first, ...rest] = items;
	if (!first) {
		yield [];
		return;
	}

	for (const others of combinationsOf(rest)) {
		const count = Math.floor((first.maximum! - first.minimum!) / first.step + 1e-6);
		for (let k = 0; k <= count; k++) yield [first.minimum! + k * first.step, ...others];
	}
}

/** The best of all combinations: worst error first, then how many are together, then the squares. */
export function bestByForce(items: readonly GridItem[]): Judged {
	let best: Judged | undefined;
	for (const stepped of combinationsOf(items)) {
		const judged = judge(items, stepped);
		if (!best || isBetter(judged, best)) best = judged;
	}

	return best!;
}

function isBetter(a: Judged, b: Judged): boolean {
	if (Math.abs(a.worst - b.worst) > 1e-6) return a.worst < b.worst;
	if (a.together !== b.together) return a.together > b.together;
	return a.squares < b.squares - 1e-9;
}
