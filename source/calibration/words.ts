import {channelNames, isLfe} from '../profile/channels.ts';
import type {LengthUnit, Profile} from '../profile/types.ts';
import {formatLength} from '../profile/units/length.ts';
import type {Remark} from './result.ts';

/** A number as sentences show it: fixed decimals, true minus sign, no "−0.0". */
export function number(value: number, decimals = 1): string {
	const text = Math.abs(value).toFixed(decimals);
	return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

/** `74.2 dB`; dB throughout. */
export function inDb(value: number, decimals = 1): string {
	return `${number(value, decimals)} dB`;
}

/** `+0.5 dB`, `−0.5 dB`, `0.0 dB`. */
export function inSignedDb(value: number, decimals = 1): string {
	const text = inDb(value, decimals);
	return value > 0 && Number.parseFloat(text) !== 0 ? `+${text}` : text;
}

/** `3.2 ms`. */
export function inMs(value: number, decimals = 1): string {
	return `${number(value, decimals)} ms`;
}

/** A length in the profile's own unit; metres where the profile names none. */
export function inLength(metres: number, unit: LengthUnit | undefined): string {
	return formatLength(metres, unit ?? 'm');
}

/** `A`, `A and B`, `A, B and C`. */
export function listed(names: readonly string[]): string {
	return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** How a sentence calls a channel, sub, seat or several sources at once: by the plain name that tables show too; by the id where it has none. */
export function nameOf(profile: Profile, id: string): string {
	if (id.includes('+')) return listed(id.split('+').map(part => nameOf(profile, part)));
	const named = profile.subs?.find(sub => sub.id === id) ?? profile.seats.find(seat => seat.id === id);
	return named?.name ?? (channelNames as Readonly<Record<string, string>>)[id] ?? id;
}

/** Channels that drive a speaker of their own, in the profile's order. */
export function mainChannels(profile: Profile): Profile['channels'] {
	return profile.channels.filter(({id}) => !isLfe(id));
}

export function remark(kind: Remark['kind'], code: string, text: string, about?: string): Remark {
	return about === undefined ? {kind, code, text} : {kind, code, about, text};
}
