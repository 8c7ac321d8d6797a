import {channelBits} from '../../science/signal/channelMask.ts';

/**
Sizes of a round: front left and right with the subs behind them, every channel that the player reaches, and the
fronts with LFE up to 300 Hz only.
*/
export type RoundSize = 'two' | 'all' | 'bass';

const sizes: readonly RoundSize[] = ['two', 'all', 'bass'];
export const codeBits = 24;
const maskBits = 18;

/**
What a round says of itself in its mark, so that a recording can be read without knowing what was played: size, the
channels that sound as speaker bits, and a check.

@param channels - Abbreviations; those with no speaker bit cannot be told.
@returns 24 bits.
@throws {RangeError} If a channel has no speaker bit.
*/
export function roundCode(size: RoundSize, channels: readonly string[]): boolean[] {
	let mask = 0;
	for (const id of channels) {
		const bit = channelBits.get(placedAs(id));
		if (bit === undefined) throw new RangeError(`a file has no place for ${id}`);
		mask |= bit;
	}

	const value = sizes.indexOf(size) * 2 ** maskBits + mask;
	return bitsOf(value * 16 + checkOf(value), codeBits);
}

/** What a code says, or `undefined` where its check does not fit. Surrounds are named by their places at the sides. */
export function readRoundCode(
	bits: readonly boolean[],
): {readonly size: RoundSize; readonly channels: readonly string[]} | undefined {
	const whole = bits.reduce((sum, bit) => sum * 2 + (bit ? 1 : 0), 0);
	const value = Math.floor(whole / 16);
	const size = sizes[Math.floor(value / 2 ** maskBits)];
	if (whole % 16 !== checkOf(value) || size === undefined) return undefined;
	const channels = [...channelBits].filter(([, bit]) => (value & bit) !== 0).map(([id]) => id);
	return channels.length > 0 && channels.length <= 8 ? {size, channels} : undefined;
}

/** The channel of a file that plays a profile's channel: a layout with one surround pair has it at the sides. */
export function placedAs(id: string): string {
	return id === 'LS' ? 'SiL' : id === 'RS' ? 'SiR' : id;
}

/** Five nibbles added up with different weights, so that two swapped or turned bits show. */
function checkOf(value: number): number {
	let sum = 5;
	for (let nibble = 0; nibble < 5; nibble += 1)
		sum += (Math.floor(value / 16 ** nibble) % 16) * (2 * nibble + 1);
	return (sum + Math.floor(sum / 16)) % 16;
}

function bitsOf(value: number, count: number): boolean[] {
	return Array.from({length: count}, (_, index) => Math.floor(value / 2 ** (count - 1 - index)) % 2 === 1);
}
