import type {Kit, TapeReading} from '../../profile/types.ts';
import {metresPerFoot, metresPerInch} from '../../profile/units/length.ts';
import type {SlipCause} from './facts.ts';
import {swappedDigits, tapeShownIn} from './swappedDigits.ts';

/** Something else that the tape may have been held to, and how far the network says that is. */
export type OtherEnd = {
	readonly end: 'from' | 'to';
	/** Id of it; for a corner the plane that the tape slipped along to. */
	readonly instead: string;
	readonly code: 'left-for-right' | 'corner' | 'other-thing';
	readonly metres: number;
	readonly sigmaMetres: number;
};

/** Slips of a fixed size; the number is how usual they are, from the trade's talk: common practice, no source. */
const offsets = [
	{code: 'one-foot', metres: metresPerFoot, usualness: 1},
	{code: 'ten-centimetres', metres: 0.1, usualness: 1},
	{code: 'one-inch', metres: metresPerInch, usualness: 0.6},
	{code: 'one-metre', metres: 1, usualness: 0.8},
	{code: 'half-metre', metres: 0.5, usualness: 0.2},
	{code: 'six-inches', metres: 6 * metresPerInch, usualness: 0.2},
] as const;

/** Length of a tape's case, which a reading between two walls must include, metres: common practice, no source. */
const tapeCase = {shortest: 0.06, longest: 0.1} as const;

type Candidate = SlipCause & {readonly weight: number};

/**
Likely causes of a wrong reading, likeliest first.

A cause counts when the value that it gives meets the expected one within three sigmas; among those that do, the usual
ones and the close ones lead. When the network expects the value so loosely that half of all slips would fit, there is
nothing to say and the list is empty.

@param expectedMetres - What the other readings expect, metres.
@param sigmaMetres - Standard uncertainty of reading and expectation together, metres.
@param others - What else the tape may have been held to.
*/
export function likelyCauses(
	kit: Kit | undefined,
	reading: TapeReading,
	expectedMetres: number,
	sigmaMetres: number,
	others: readonly OtherEnd[] = [],
): SlipCause[] {
	const found: Candidate[] = [];
	const {metres} = reading;
	const offer = (
		code: string,
		value: number,
		usualness: number,
		target = expectedMetres,
		sigma = sigmaMetres,
		from = value,
		more: Pick<SlipCause, 'isLong' | 'end' | 'instead'> = {},
	) => {
		const misfit = Math.abs(from - target) / sigma;
		if (value < 0 || misfit > 3) return;
		found.push({code, metres: value, ...more, misfit, weight: usualness * Math.exp(-(misfit ** 2) / 2)});
	};

	for (const {code, metres: size, usualness} of offsets) {
		// A slip no larger than twice the doubt itself cannot be told from the doubt.
		if (size < 2 * sigmaMetres) continue;
		offer(code, metres - size, usualness, expectedMetres, sigmaMetres, metres - size, {isLong: true});
		offer(code, metres + size, usualness, expectedMetres, sigmaMetres, metres + size, {isLong: false});
	}

	offer('feet-as-metres', metres * metresPerFoot, 1);
	offer('metres-as-feet', metres / metresPerFoot, 1);
	for (const swapped of swappedDigits(metres, tapeShownIn(kit))) {
		offer('swapped-digits', swapped.metres, 0.7);
	}

	for (const other of others) {
		// The reading is right for another thing: what it should have been is what the network expects of the named one.
		if (Math.abs(other.metres - expectedMetres) < 2 * sigmaMetres) continue;
		const sigma = Math.hypot(sigmaMetres, other.sigmaMetres);
		offer(other.code, expectedMetres, other.code === 'other-thing' ? 0.3 : 0.9, other.metres, sigma, metres, {
			end: other.end,
			instead: other.instead,
		});
	}

	const short = expectedMetres - metres;
	const isBetweenWalls = reading.from.startsWith('wall:') && reading.to.startsWith('wall:');
	if (short > tapeCase.shortest && short < tapeCase.longest) {
		offer('tape-case', expectedMetres, isBetweenWalls ? 0.9 : 0.15);
	}

	const best = new Map<string, Candidate>();
	for (const candidate of found.sort((a, b) => b.weight - a.weight)) {
		if (!best.has(candidate.code)) best.set(candidate.code, candidate);
	}

	const ranked = [...best.values()];
	const top = ranked[0]?.weight ?? 0;
	return ranked.filter(({weight}) => weight >= top / 10).map(({weight: _, ...cause}) => cause);
}

/** "Front right" for "Front left", and the left wall for the right one; undefined for what has no other side. */
export function oppositeEnd(end: string): string | undefined {
	const walls: Readonly<Record<string, string>> = {
		'wall:left': 'wall:right',
		'wall:right': 'wall:left',
		'wall:front': 'wall:back',
		'wall:back': 'wall:front',
		floor: 'ceiling',
		ceiling: 'floor',
		LS: 'RS',
		RS: 'LS',
		LSd: 'RSd',
		RSd: 'LSd',
		TpLS: 'TpRS',
		TpRS: 'TpLS',
	};
	if (Object.hasOwn(walls, end)) return walls[end];
	const match = /^((?:Tp|Bt)?(?:F|B|Si))([LR])([cw]?)$/.exec(end);
	return match ? `${match[1]}${match[2] === 'L' ? 'R' : 'L'}${match[3]}` : undefined;
}
