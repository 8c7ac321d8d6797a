import type {BrokenCeiling} from './roomSize.ts';

/**
The shortest way from a point below a ceiling of several heights to that ceiling, in the plane across its bends.

@param along - Where the point is along the axis over which the height changes, metres; `up` its height.
@param out - Takes the derivatives by `along` and `up`, dimensionless.
@returns Metres; below zero above the ceiling.
*/
export function toBrokenCeiling(
	places: BrokenCeiling['places'],
	along: number,
	up: number,
	out: Float64Array,
): number {
	let least = Number.POSITIVE_INFINITY;
	let [near, high] = [0, 0];
	let top = Number.POSITIVE_INFINITY;
	for (let i = 1; i < places.length; i++) {
		const [from, to] = [places[i - 1]!, places[i]!];
		const [run, rise] = [to.atMetres - from.atMetres, to.heightMetres - from.heightMetres];
		const share =
			((along - from.atMetres) * run + (up - from.heightMetres) * rise) / (run * run + rise * rise);
		const within = Math.min(1, Math.max(0, share));
		const [u, z] = [from.atMetres + within * run, from.heightMetres + within * rise];
		const metres = Math.hypot(along - u, up - z);
		if (metres < least) {
			least = metres;
			near = u;
			high = z;
		}

		if (along >= from.atMetres && along <= to.atMetres && run > 0)
			top = from.heightMetres + (rise * (along - from.atMetres)) / run;
	}

	const sign = up > top ? -1 : 1;
	// On the ceiling itself the way has no direction: straight up then.
	const isThere = least < 1e-9;
	out[0] = isThere ? 0 : (sign * (along - near)) / least;
	out[1] = isThere ? -1 : (sign * (up - high)) / least;
	return sign * least;
}
