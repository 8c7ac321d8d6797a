import type {Observation} from './observations.ts';

/**
Parts of the network that hang together by point-to-point readings.

@param count - Number of points.
@returns For each point the number of its part; −1 for a point that no observation touches.
*/
export function componentsOf(observations: readonly Observation[], count: number): Int32Array {
	const parent = Int32Array.from({length: count}, (_, index) => index);
	const root = (index: number): number => {
		let at = index;
		while (parent[at] !== at) at = parent[at]!;
		parent[index] = at;
		return at;
	};

	const isTouched = new Uint8Array(count);
	for (const observation of observations) {
		if (observation.kind === 'planes') continue;
		if (observation.kind === 'points') {
			const a = observation.from / 3;
			const b = observation.to / 3;
			isTouched[a] = 1;
			isTouched[b] = 1;
			parent[root(a)] = root(b);
		} else isTouched[observation.point / 3] = 1;
	}

	return parent.map((_, index) => (isTouched[index] ? root(index) : -1));
}
