/**
Channel abbreviations and plain names.

@see IEC 62574:2020 and CTA-861 speaker names, as listed in the loudspeaker table of the McGill TSP library.
*/
export const channelNames = {
	FL: 'Front left',
	FR: 'Front right',
	FC: 'Front centre',
	LFE1: 'Low frequency effects 1',
	BL: 'Back left',
	BR: 'Back right',
	FLc: 'Front left of centre',
	FRc: 'Front right of centre',
	BC: 'Back centre',
	LFE2: 'Low frequency effects 2',
	SiL: 'Side left',
	SiR: 'Side right',
	TpFL: 'Top front left',
	TpFR: 'Top front right',
	TpFC: 'Top front centre',
	TpC: 'Top centre',
	TpBL: 'Top back left',
	TpBR: 'Top back right',
	TpSiL: 'Top side left',
	TpSiR: 'Top side right',
	TpBC: 'Top back centre',
	BtFC: 'Bottom front centre',
	BtFL: 'Bottom front left',
	BtFR: 'Bottom front right',
	FLw: 'Front left wide',
	FRw: 'Front right wide',
	LS: 'Left surround',
	RS: 'Right surround',
	LSd: 'Left surround direct',
	RSd: 'Right surround direct',
	TpLS: 'Top left surround',
	TpRS: 'Top right surround',
} as const;

export type ChannelId = keyof typeof channelNames;

export const channelIds = Object.keys(channelNames) as ChannelId[];

/** Whether the speaker hangs above the seats, where taping and mounting mean a ladder. */
export function isOverhead(id: string): boolean {
	return id.startsWith('Tp');
}

/** Whether the channel carries only low-frequency effects and so drives subwoofers, not a speaker. */
export function isLfe(id: string): id is 'LFE1' | 'LFE2' {
	return id === 'LFE1' || id === 'LFE2';
}
