import {type Ask, type No, numberText, readScaled, unknownUnit} from './scaled.ts';

export type TimeChoice = {readonly milliseconds: number; readonly readAs: string};
export type TimeReading = (TimeChoice & {readonly kind: 'ok'}) | Ask<TimeChoice> | No;

const millisecondsPer: Readonly<Record<string, number>> = {
	ms: 1,
	msec: 1,
	milliseconds: 1,
	s: 1000,
	sec: 1000,
	seconds: 1000,
	us: 0.001,
	// The micro sign becomes a Greek mu when the text is normalised.
	μs: 0.001,
	µs: 0.001,
	microseconds: 0.001,
};

/** Delays and latencies in a home are shorter than this; longer ones are asked about. */
const usualLimitMs = 1000;
const largestMs = 10_000;

/**
Reads a delay or latency: `5.3`, `5,3 ms`, `0.0053 s`, `5300 µs`. A bare number is in milliseconds.

@returns `ok` up to one second either way; a question up to ten seconds; a sentence beyond. Never throws.
*/
export function readTime(text: string): TimeReading {
	const scaled = readScaled(text, '5.3 ms');
	if ('kind' in scaled) return scaled;
	const factor = millisecondsPer[scaled.unit === '' ? 'ms' : scaled.unit];
	if (factor === undefined) return unknownUnit(scaled.unit, '5.3 ms');
	// Rounded at a nanosecond, so that 5300 µs is 5.3 ms and not 5.300000000000001 ms.
	const milliseconds = Math.round(scaled.value * factor * 1e6) / 1e6;
	const choice: TimeChoice = {milliseconds, readAs: formatTime(milliseconds)};
	if (Math.abs(milliseconds) > largestMs) {
		return {kind: 'no', why: `${choice.readAs} is far too long for a delay. Check the number and its unit.`};
	}

	if (Math.abs(milliseconds) <= usualLimitMs) return {kind: 'ok', ...choice};
	const asMicroseconds = milliseconds / 1000;
	return {
		kind: 'ask',
		question: `${choice.readAs} is more than a second. Which was meant?`,
		choices: [{milliseconds: asMicroseconds, readAs: formatTime(asMicroseconds)}, choice],
	};
}

/** A time for people, in milliseconds with at most the given decimals. */
export function formatTime(milliseconds: number, decimals = 3): string {
	return `${numberText(milliseconds, decimals)} ms`;
}
