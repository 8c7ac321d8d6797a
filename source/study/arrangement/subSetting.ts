/** What one sub does beyond arriving together with the others at the reference seat. */
export type SubSetting = {readonly delayMs: number; readonly gainDb: number; readonly isInverted: boolean};

export const plainSetting: SubSetting = {delayMs: 0, gainDb: 0, isInverted: false};

/** What a setting does to a source at every frequency: complex factors. */
export type Turn = {readonly real: Float64Array; readonly imaginary: Float64Array};

/** The factors of a setting; undefined where it changes nothing. */
export function turnOf(frequenciesHertz: readonly number[], setting: SubSetting): Turn | undefined {
	const {delayMs, gainDb, isInverted} = setting;
	if (delayMs === 0 && gainDb === 0 && !isInverted) return undefined;
	const factor = (isInverted ? -1 : 1) * 10 ** (gainDb / 20);
	const real = new Float64Array(frequenciesHertz.length);
	const imaginary = new Float64Array(frequenciesHertz.length);
	for (let f = 0; f < real.length; f++) {
		const phase = (-2 * Math.PI * frequenciesHertz[f]! * delayMs) / 1000;
		real[f] = factor * Math.cos(phase);
		imaginary[f] = factor * Math.sin(phase);
	}

	return {real, imaginary};
}
