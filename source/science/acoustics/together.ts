const bandPoints = 48;

/**
Mean of cos(2πfΔt) over a band of pink noise, which has equal power per logarithmic step: how far two arrivals of one
signal add up.

@param lagMs - Difference of the two arrivals, ms.
@returns 1 for none, towards 0 for a long one.
*/
export function meanCosine(fromHertz: number, toHertz: number, lagMs: number): number {
	if (lagMs === 0) return 1;
	const ratio = Math.log(toHertz / fromHertz);
	let sum = 0;
	for (let index = 0; index < bandPoints; index++) {
		const frequencyHz = fromHertz * Math.exp((ratio * (index + 0.5)) / bandPoints);
		sum += Math.cos((2 * Math.PI * frequencyHz * lagMs) / 1000);
	}

	return sum / bandPoints;
}

/**
Level of several sources of one signal together.

@param levelsDb - Shape (n ≥ 1), each alone, dB.
@param likeness - Of sources i and j, −1…1: 1 in phase, 0 without relation, −1 in opposition.
@returns dB; a full cancellation is held at 40 dB below the energy sum, for no room cancels better.
*/
export function combinedLevelDb(
	levelsDb: readonly number[],
	likeness: (i: number, j: number) => number,
): number {
	let energy = 0;
	let cross = 0;
	for (const [i, first] of levelsDb.entries()) {
		energy += 10 ** (first / 10);
		for (let j = 0; j < i; j++) cross += 2 * 10 ** ((first + levelsDb[j]!) / 20) * likeness(i, j);
	}

	return 10 * Math.log10(Math.max(energy + cross, energy * 1e-4));
}
