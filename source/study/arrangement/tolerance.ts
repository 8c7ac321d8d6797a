import type {Vector} from '../survey/vectors.ts';
import type {PlanBench} from './planBench.ts';
import type {Variant} from './variants.ts';

/** How far off its cross a thing may end up before it is worth lifting again, metres; judgement, as no hand is steadier with a sub. */
const withinMetres = 0.08;
/** Sides to which everything is pushed in turn. */
const directions = 8;

/**
What it costs when things end up a little off their crosses, from the plan's own draws: each time everything is pushed by
the same length, every thing to another side.

@returns The length, metres, and by how much the seats then differ more on average, dB; 0 where it makes nothing worse.
*/
export function planTolerance(
	bench: PlanBench,
	{subs, seats}: Variant,
): {readonly withinMetres: number; readonly costDb: number} {
	const exact = bench.judge({subs, seats, lifted: 0}).judged.meanDb;
	const push = ([x, y, z]: Vector, turn: number): Vector => [
		x + withinMetres * Math.cos(turn),
		y + withinMetres * Math.sin(turn),
		z,
	];
	const isOut = (at: Vector) => bench.outside({subs: [at], seats: []}).length > 0;
	let sum = 0;
	for (let i = 0; i < directions; i++) {
		// Two things pushed to one side alike would keep their distance.
		const turn = (thing: number) => (2 * Math.PI * (i + 0.37 * directions * thing)) / directions;
		const moved = (at: Vector, thing: number) => {
			const to = push(at, turn(thing));
			return isOut(to) ? at : to;
		};
		sum += bench.judge({
			subs: subs.map(moved),
			seats: seats.map(at => moved(at, subs.length)),
			lifted: 0,
		}).judged.meanDb;
	}

	const costDb = Math.max(0, sum / directions - exact);
	return {withinMetres, costDb: Math.round(costDb * 100) / 100};
}
