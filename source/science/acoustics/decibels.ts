/**
Arithmetic of levels in decibels. Lists may be of any length ≥ 1; an empty list has no level and throws.

Means and sums on energy: ISO 3744:2010 uses them throughout; the clause was not looked up.
*/

// The exponential is several times faster than a power of ten, which counts with a hundred thousand repeats.
const power = (levelDb: number) => Math.exp((levelDb * Math.LN10) / 10);

/**
Level of the mean energy: 10·lg((1/N)·Σ 10^(L/10)).

@param levelsDb - Shape (n ≥ 1), dB.
@param weights - Shape (n), each ≥ 0, sum > 0; equal where not given.
@returns dB.
@throws {RangeError} If the list is empty or no weight is positive.
*/
export function energyMean(levelsDb: readonly number[], weights?: readonly number[]): number {
	// Relative to the largest, so that no level is too high or too low for a double.
	const top = loudest(levelsDb);
	let sum = 0;
	let total = 0;
	for (const [index, levelDb] of levelsDb.entries()) {
		const weight = weights ? (weights[index] ?? 0) : 1;
		sum += weight * power(levelDb - top);
		total += weight;
	}

	if (!(total > 0)) throw new RangeError(`weights must have a sum > 0, got ${total}`);
	return top + 10 * Math.log10(sum / total);
}

/**
Level of incoherent sources together: 10·lg Σ 10^(L/10).

@param levelsDb - Shape (n ≥ 1), dB.
@returns dB.
@throws {RangeError} If the list is empty.
*/
export function energySum(levelsDb: readonly number[]): number {
	return energyMean(levelsDb) + 10 * Math.log10(levelsDb.length);
}

/**
Level of sources that arrive in phase: 20·lg Σ 10^(L/20), the most that they can make together.

@param levelsDb - Shape (n ≥ 1), dB.
@returns dB.
@throws {RangeError} If the list is empty.
*/
export function coherentSum(levelsDb: readonly number[]): number {
	const top = loudest(levelsDb);
	return top + 20 * Math.log10(levelsDb.reduce((sum, levelDb) => sum + 10 ** ((levelDb - top) / 20), 0));
}

/**
Largest minus smallest level.

@param levelsDb - Shape (n ≥ 1), dB.
@returns dB, ≥ 0.
@throws {RangeError} If the list is empty.
*/
export function spread(levelsDb: readonly number[]): number {
	return loudest(levelsDb) - levelsDb.reduce((low, levelDb) => Math.min(low, levelDb));
}

/** A loop, because the spread operator runs out of stack on a hundred thousand repeats. */
function loudest(levelsDb: readonly number[]): number {
	if (levelsDb.length === 0) throw new RangeError('levelsDb must hold at least one level, got none');
	return levelsDb.reduce((high, levelDb) => Math.max(high, levelDb));
}
