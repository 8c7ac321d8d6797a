/**
Decimals that show a stepped value exactly: at least `least`, at most three.
Steps of boxes are round in decimal notation, sums of them are not in binary; 1e-6 is far below any step.
*/
export function decimalsOf(value: number, least = 1): number {
	for (let decimals = least; decimals < 3; decimals++) {
		if (Math.abs(Number(value.toFixed(decimals)) - value) < 1e-6) return decimals;
	}

	return 3;
}

/** A number for people: true minus sign, no "−0.0". */
export function formatNumber(value: number, decimals: number): string {
	const text = Math.abs(value).toFixed(decimals);
	return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

/** A number for people with its sign, also plus; zero has none. */
export function formatSigned(value: number, decimals: number): string {
	const text = formatNumber(value, decimals);
	return value > 0 && Number(text) !== 0 ? `+${text}` : text;
}
