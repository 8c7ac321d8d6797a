import {type ChannelId, isLfe, isOverhead} from './channels.ts';

export type Range = readonly [low: number, high: number];

/**
Where a channel belongs, seen from the reference seat, for the left one of a pair (azimuth positive to the left).
A range is absent where none is published: then only the deviation from the nominal angle can be told.
*/
export type Place = {
	readonly azimuthDegrees: number;
	readonly elevationDegrees: number;
	readonly azimuthRange?: Range;
	readonly elevationRange?: Range;
	/** The publication, or that there is none. */
	readonly source: string;
};

export const commonPractice = 'common practice, no source';
const system = (letter: string) => `ITU-R BS.2051-1 (2017) system ${letter}`;

const place = (
	source: string,
	azimuthDegrees: number,
	elevationDegrees: number,
	azimuthRange?: Range,
	elevationRange?: Range,
): Place => ({
	azimuthDegrees,
	elevationDegrees,
	...(azimuthRange && {azimuthRange}),
	...(elevationRange && {elevationRange}),
	source,
});

type Pairs = Partial<Record<ChannelId, Place>>;
const both = (left: ChannelId, right: ChannelId, at: Place): Pairs => ({[left]: at, [right]: mirrored(at)});

/** The same place on the other side. */
export function mirrored(at: Place): Place {
	const {azimuthRange: range} = at;
	return {
		...at,
		azimuthDegrees: -at.azimuthDegrees,
		...(range && {azimuthRange: [-range[1], -range[0]] as const}),
	};
}

/**
Ear-level and lower places, by how many pairs of surrounds there are.

@see ITU-R BS.2051-1 (06/2017), tables of systems A to J, as transcribed in the data of a public renderer of the
European Broadcasting Union (a third edition exists and was not compared); ITU-R BS.775-3 figure 1 for the five (30°, 100° to 120°, 0 to 15° inclination).
*/
const shared: Pairs = {
	...both('FLc', 'FRc', place(`${system('G')}, which lists the range alone`, 15, 0, [5, 25])),
	...both('FLw', 'FRw', place(`${system('H')}, position M±060`, 60, 0, [45, 60], [0, 5])),
	FC: place(system('B'), 0, 0),
	BC: place(`${system('H')}, position M+180`, 180, 0, undefined, [0, 15]),
	BtFC: place(`${system('H')}, position B+000`, 0, -30, undefined, [-30, -15]),
	...both('BtFL', 'BtFR', place(`${system('H')}, position B±045`, 45, -30, [45, 60], [-30, -15])),
	...both('LSd', 'RSd', place(commonPractice, 110, 0)),
};
const onePairSource = `ITU-R BS.775-3 and ${system('B')}`;
const surround = place(onePairSource, 110, 0, [100, 120], [0, 15]);
const oneSurroundPair: Pairs = {
	...shared,
	...both('FL', 'FR', place(onePairSource, 30, 0)),
	...both('LS', 'RS', surround),
	...both('SiL', 'SiR', surround),
	...both('BL', 'BR', surround),
};
const side = place(system('I'), 90, 0, [85, 110]);
const twoSurroundPairs: Pairs = {
	...shared,
	...both('FL', 'FR', place(system('I'), 30, 0, [30, 45])),
	...both('SiL', 'SiR', side),
	...both('LS', 'RS', side),
	...both('BL', 'BR', place(system('I'), 135, 0, [120, 150])),
};
const twoChannels: Pairs = {...oneSurroundPair, ...both('FL', 'FR', place(system('A'), 30, 0))};

/** Overhead places; those that homes use and the recommendation does not list are marked as common practice. */
const sharedOverheads: Pairs = {
	TpFC: place(`${system('H')}, position U+000`, 0, 30, undefined, [30, 45]),
	TpC: place(`${system('H')}, position T+000`, 0, 90),
	TpBC: place(`${system('H')}, position U+180`, 180, 30, undefined, [30, 45]),
	...both('TpSiL', 'TpSiR', place(commonPractice, 90, 60, [70, 110], [45, 80])),
	...both('TpLS', 'TpRS', place(commonPractice, 110, 45)),
};
const overFive = (letter: string): Pairs => ({
	...sharedOverheads,
	...both('TpFL', 'TpFR', place(system(letter), 30, 30, [30, 45], [30, 55])),
	...both('TpBL', 'TpBR', place(system('D'), 110, 30, [100, 135], [30, 55])),
});
const overSeven = (source: string): Pairs => ({
	...sharedOverheads,
	...both('TpFL', 'TpFR', place(source, 45, 30, [30, 45], [30, 55])),
	...both('TpBL', 'TpBR', place(source, 135, 30, [100, 150], [30, 55])),
});

/** A layout: its usual name and the place of each of its channels. */
export type Layout = {readonly name: string; readonly places: ReadonlyMap<ChannelId, Place>};

/**
The layout that a set of channels makes, from 2.0 to 9.1.6: ear level, low-frequency channels, overheads.

With one pair of surrounds, whatever it is called, it is the surround pair of the five-channel layout.
*/
export function layoutOf(channels: readonly ChannelId[]): Layout {
	const has = (id: ChannelId) => channels.includes(id);
	const overheads = channels.filter(isOverhead);
	const low = channels.filter(isLfe);
	const earLevel = channels.filter(id => !isOverhead(id) && !isLfe(id));
	const isTwoPairs = has('BL') && (has('SiL') || has('LS'));
	const base = isTwoPairs ? twoSurroundPairs : earLevel.length <= 2 ? twoChannels : oneSurroundPair;
	const isListedOverSeven = has('TpFL') && has('TpBL');
	const above = isTwoPairs
		? overSeven(isListedOverSeven ? system('J') : `${commonPractice}; angles of ${system('J')}`)
		: overFive(isListedOverSeven ? 'D' : 'C');
	const name = [earLevel.length, low.length, ...(overheads.length > 0 ? [overheads.length] : [])].join('.');
	const places = new Map<ChannelId, Place>();
	for (const id of channels) {
		const at = base[id] ?? above[id];
		if (at) places.set(id, at);
	}

	return {name, places};
}
