import {finding} from '../../profile/finding.ts';
import {median} from '../../science/numeric/statistics.ts';
import type {HearingFinding} from './facts.ts';
import type {HeardLine} from './heardPlaying.ts';

/** What tape and boxes say of one line. */
export type ExpectedLine = {
	readonly channel: string;
	/** Way through the air and stated latencies, ms; absent where nothing was taped. */
	readonly flightMs?: number;
	readonly sigmaMs?: number;
	readonly latencyMs: number;
	/** Delay that the settings in force add, ms. */
	readonly delayMs: number;
	readonly isInverted: boolean;
	/** The channel on the other side. */
	readonly twin?: string;
};

/** What a recording says beyond its findings: taken over only where the person agrees. */
export type HeardOffers = {
	readonly latencies: ReadonlyArray<{readonly channel: string; readonly ms: number}>;
	readonly distances: ReadonlyArray<{
		readonly channel: string;
		readonly metres: number;
		readonly sigmaMetres: number;
	}>;
};

/** Less than this off is within what tapes and microphones hold, ms: 10 cm. */
const leastOffMs = 0.3;
/** A sign is told from the noise of reflections from here on. */
const clearFrom = 0.15;

/** Arrivals and polarity of a playing's mains held against tape, stated latencies and settings in force. */
export function againstTape(
	lines: readonly HeardLine[],
	expected: readonly ExpectedLine[],
	metresPerSecond: number,
): {readonly findings: HearingFinding[]; readonly offers: HeardOffers} {
	const mains = lines.filter(({isSub, delayMs}) => !isSub && delayMs !== undefined);
	const known = mains.flatMap(line => {
		const own = expected.find(({channel}) => channel === line.channel);
		return own?.flightMs === undefined
			? []
			: [{line, own, offMs: line.delayMs! - own.flightMs - own.latencyMs - own.delayMs}];
	});
	// All count from the first channel, which may be the odd one out itself: the middle one is right.
	const common = median(known.length > 0 ? known.map(({offMs}) => offMs) : [0]);
	const findings: HearingFinding[] = [];
	const latencies: Array<{channel: string; ms: number}> = [];
	const exchanged = new Set<string>();
	const limitOf = ({line, own}: (typeof known)[number]) =>
		Math.max(leastOffMs, 4 * Math.hypot(own.sigmaMs ?? 0, line.sigmaMs ?? 0));
	const isOff = (each: (typeof known)[number]) =>
		known.length > 2 && Math.abs(each.offMs - common) > limitOf(each);
	const [first, second] = known;
	if (known.length === 2 && first && second) {
		const ms = first.offMs - second.offMs;
		// Two tell that something is off, and not which of them.
		if (Math.abs(ms) > Math.hypot(limitOf(first), limitOf(second))) {
			const [later, earlier] = ms > 0 ? [first, second] : [second, first];
			const about = [later.line.channel, earlier.line.channel];
			findings.push(finding('doubt', 'heard-one-late', about, {ms: Math.abs(ms)}));
		}
	}

	for (const [index, one] of known.entries())
		for (const other of known.slice(index + 1)) {
			if (!isOff(one) || !isOff(other)) continue;
			const swappedOff = (line: HeardLine, by: ExpectedLine, own: ExpectedLine) =>
				Math.abs(line.delayMs! - common - by.flightMs! - by.latencyMs - own.delayMs);
			if (
				swappedOff(one.line, other.own, one.own) > leastOffMs ||
				swappedOff(other.line, one.own, other.own) > leastOffMs
			)
				continue;
			exchanged.add(one.line.channel).add(other.line.channel);
			findings.push(finding('problem', 'heard-exchanged', [one.line.channel, other.line.channel]));
		}

	for (const each of known) {
		const {line, offMs} = each;
		if (!isOff(each) || exchanged.has(line.channel)) continue;
		const ms = offMs - common;
		findings.push(
			ms > 0
				? finding('doubt', 'heard-late', [line.channel], {ms})
				: finding('doubt', 'heard-early', [line.channel], {ms: -ms}),
		);
		if (ms > 0) latencies.push({channel: line.channel, ms});
	}

	const distances = mains.flatMap(line => {
		const own = expected.find(({channel}) => channel === line.channel);
		if (!own || own.flightMs !== undefined || known.length === 0) return [];
		const flightMs = line.delayMs! - common - own.latencyMs - own.delayMs;
		const metres = (flightMs * metresPerSecond) / 1000;
		const sigmaMetres = Math.max(0.02, ((line.sigmaMs ?? 0.03) * metresPerSecond) / 1000);
		if (!(metres > 0.2)) return [];
		findings.push(finding('note', 'heard-not-taped', [line.channel], {metres, sigmaMetres}));
		return [{channel: line.channel, metres, sigmaMetres}];
	});
	return {findings: [...findings, ...polarityFindings(mains, expected)], offers: {latencies, distances}};
}

function polarityFindings(mains: readonly HeardLine[], expected: readonly ExpectedLine[]): HearingFinding[] {
	const signs = new Map<string, number>();
	for (const {channel, polarity} of mains) {
		if (!polarity || polarity.clearness < clearFrom) continue;
		const isInverted = expected.find(own => own.channel === channel)?.isInverted ?? false;
		signs.set(channel, polarity.sign * (isInverted ? -1 : 1));
	}

	const sum = [...signs.values()].reduce((total, sign) => total + sign, 0);
	// The recorder itself may turn everything: what most lines do is right.
	const right = sum === 0 ? 1 : Math.sign(sum);
	const findings: HearingFinding[] = [];
	const named = new Set<string>();
	for (const [channel, sign] of signs) {
		const twin = expected.find(own => own.channel === channel)?.twin;
		const other = twin === undefined ? undefined : signs.get(twin);
		if (named.has(channel) || other === undefined || other === sign) continue;
		named.add(channel).add(twin!);
		findings.push(finding('problem', 'heard-twins-differ', [channel, twin!]));
	}

	for (const [channel, sign] of signs)
		if (sign !== right && !named.has(channel) && signs.size > 1)
			findings.push(finding('doubt', 'heard-reversed', [channel]));
	return findings;
}
