/** Degrees as people write them, with a true minus: to whole degrees, or to tenths. */
export function degreesText(degrees: number, digits = 0): string {
	const text = Math.abs(degrees).toFixed(digits);
	return `${degrees < 0 && Number(text) !== 0 ? '−' : ''}${text}°`;
}
