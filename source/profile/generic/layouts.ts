import type {ChannelId} from '../channels.ts';

const front = ['FL', 'FR', 'FC', 'LFE1'] as const;
const onePair = [...front, 'LS', 'RS'] as const;
const twoPairs = [...front, 'SiL', 'SiR', 'BL', 'BR'] as const;
const wide = [...twoPairs, 'FLw', 'FRw'] as const;
const twoTops = ['TpSiL', 'TpSiR'] as const;
const fourTops = ['TpFL', 'TpFR', 'TpBL', 'TpBR'] as const;
const sixTops = ['TpFL', 'TpFR', 'TpSiL', 'TpSiR', 'TpBL', 'TpBR'] as const;

/**
Layouts by their usual short names: speakers at ear height, low-frequency channels, speakers overhead. One surround pair is
`LS RS`; with two pairs they are `SiL SiR` and `BL BR`. Two overhead speakers are the pair at the sides: common practice, no source.
*/
export const layouts = {
	'2.0': ['FL', 'FR'],
	'2.1': ['FL', 'FR', 'LFE1'],
	'3.1': front,
	'5.0': ['FL', 'FR', 'FC', 'LS', 'RS'],
	'5.1': onePair,
	'5.1.2': [...onePair, ...twoTops],
	'5.1.4': [...onePair, ...fourTops],
	'7.1': twoPairs,
	'7.1.2': [...twoPairs, ...twoTops],
	'7.1.4': [...twoPairs, ...fourTops],
	'9.1.4': [...wide, ...fourTops],
	'9.1.6': [...wide, ...sixTops],
} as const satisfies Readonly<Record<string, readonly ChannelId[]>>;

export type LayoutName = keyof typeof layouts;
export const layoutNames = Object.keys(layouts) as LayoutName[];

/** Most subs that a layout's name may tell. */
const mostSubs = 4;

/**
Reads a layout whose middle figure is the number of subs: `5.2.4` is 5.1.4 with two subs on its one low-frequency channel.

@returns `undefined` for any other text, and for layouts with one sub or none, which have their own name.
*/
export function readLayout(text: string): {readonly layout: LayoutName; readonly subs: number} | undefined {
	const [, ear, middle, top = ''] = /^\s*(\d+)\.(\d)(\.\d+)?\s*$/.exec(text) ?? [];
	const subs = Number(middle);
	const layout = layoutNames.find(name => name === `${ear}.1${top}`);
	return layout && subs > 1 && subs <= mostSubs ? {layout, subs} : undefined;
}
