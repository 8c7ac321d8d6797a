/**
Speaker bits of a WAVE_FORMAT_EXTENSIBLE file, by channel abbreviation, in the order that channels must take.

@see Microsoft, Multiple Channel Audio Data and WAVE Files (2001), dwChannelMask, as in ksmedia.h (from memory; held
against the masks that the wavefile library writes in a test).
*/
export const channelBits: ReadonlyMap<string, number> = new Map(
	[
		'FL',
		'FR',
		'FC',
		'LFE1',
		'BL',
		'BR',
		'FLc',
		'FRc',
		'BC',
		'SiL',
		'SiR',
		'TpC',
		'TpFL',
		'TpFC',
		'TpFR',
		'TpBL',
		'TpBC',
		'TpBR',
	].map((id, index) => [id, 2 ** index]),
);

/** A layout with one surround pair stands at the sides. */
const standsFor: Readonly<Record<string, string>> = {LS: 'SiL', RS: 'SiR'};

export type ChannelOrder = {
	/** Channels in the order of the file. */
	readonly channels: readonly string[];
	/** Speaker mask; channels beyond its bits come last and have no place in it. */
	readonly mask: number;
	/** Channels for which the format knows no place. */
	readonly unplaced: readonly string[];
};

/**
Order of channels in a file and its speaker mask.

@param channels - Abbreviations, each once.
@returns Channels of the mask in the order of its bits, then those that it does not know, as given.
*/
export function channelOrder(channels: readonly string[]): ChannelOrder {
	const bitOf = (id: string): number => {
		const other = standsFor[id];
		return channelBits.get(other !== undefined && !channels.includes(other) ? other : id) ?? 0;
	};
	const placed = channels.filter(id => bitOf(id) > 0).sort((one, other) => bitOf(one) - bitOf(other));
	const unplaced = channels.filter(id => bitOf(id) === 0);
	return {
		channels: [...placed, ...unplaced],
		mask: placed.reduce((sum, id) => sum + bitOf(id), 0),
		unplaced,
	};
}
