import {formatNumber, formatSigned} from '../../profile/units/decimalText.ts';

/** What was read of a tone, and what it would be as it stands and with the change, dB. */
type ReadTone = {
	readonly hertz: number;
	readonly readings: ReadonlyArray<{
		readonly laterMs: number;
		readonly inverted: boolean;
		readonly levelDb: number;
	}>;
	readonly standsDb?: {readonly value: number};
	readonly wantedDb?: {readonly value: number};
};

/** A tone's cells in a table: the tone, what was read at which delay, as it stands, and then. */
export function toneCells({hertz, readings, standsDb, wantedDb}: ReadTone, turnedWord: string): string[] {
	const level = (estimate: {readonly value: number} | undefined) =>
		estimate ? formatNumber(estimate.value, 1) : '';
	return [
		`${formatNumber(hertz, 0)} Hz`,
		readings
			.map(
				({laterMs, inverted, levelDb}) =>
					`${formatNumber(levelDb, 1)} at ${formatSigned(laterMs, 1)}${inverted ? ` ${turnedWord}` : ''}`,
			)
			.join(', '),
		level(standsDb),
		level(wantedDb),
	];
}
