import type {SettingsSet} from '../../source/profile/types.ts';

/** What stands in receiver and processor, as the electronics take it. */
export type BoxesState = {
	readonly masterDb: number;
	readonly lfeLowPassHertz: number;
	readonly channels: Readonly<Record<string, ChannelBox>>;
	readonly outputs: Readonly<Record<string, OutputBox>>;
};
export type ChannelBox = {
	readonly trimDb: number;
	/** Delay, ms; a distance counts as the delay it stands for, less than 0. */
	readonly delayMs: number;
	/** Undefined or `full`: no filter. */
	readonly crossoverHertz: number | 'full' | undefined;
	readonly isInverted: boolean;
};
export type OutputBox = {readonly gainDb: number; readonly delayMs: number; readonly isInverted: boolean};

/** Receivers that take distances reckon with this speed unless they say another, m/s. */
const receiverSpeed = 343;
export const usualLfeLowPassHertz = 120;

/**
What a set of settings makes of the boxes when it is typed in as it stands. Only the file's keys are read here; what the
product thinks of them is not asked.
*/
export function boxesOf(
	set: Partial<Pick<SettingsSet, 'masterVolumeDb' | 'lfeLowPassHertz' | 'outputs'>> &
		Pick<SettingsSet, 'channels'>,
): BoxesState {
	return {
		masterDb: set.masterVolumeDb ?? 0,
		lfeLowPassHertz: set.lfeLowPassHertz ?? usualLfeLowPassHertz,
		channels: Object.fromEntries(
			Object.entries(set.channels).map(([id, one]) => [
				id,
				{
					trimDb: one.trimDb?.stepped ?? 0,
					delayMs:
						one.delayMs?.stepped ??
						(one.distanceMetres ? (-1000 * one.distanceMetres.stepped) / receiverSpeed : 0),
					crossoverHertz: one.crossoverHertz,
					isInverted: one.polarityInverted ?? false,
				},
			]),
		),
		outputs: Object.fromEntries(
			Object.entries(set.outputs ?? {}).map(([id, one]) => [
				id,
				{
					gainDb: one.gainDb?.stepped ?? 0,
					delayMs: one.delayMs?.stepped ?? 0,
					isInverted: one.polarityInverted ?? false,
				},
			]),
		),
	};
}
