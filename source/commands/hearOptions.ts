import {Trouble} from '../platform/trouble.ts';
import {readCurveFile} from '../platform/wholeFile.ts';
import type {Profile} from '../profile/types.ts';
import {curveFromText} from '../study/hearing/curveText.ts';
import type {PlayingName} from '../study/hearing/playingRow.ts';
import {seatsInOrder} from '../study/hearing/understand.ts';
import {subGroups} from '../study/hearing/visit.ts';

/** Seats in the order of the spots: those asked for, else the reference seat first. */
export function seatsFor(profile: Profile, asked: readonly string[] | undefined): string[] {
	const ids = profile.seats.map(({id}) => id);
	if (!asked || asked.length === 0) return seatsInOrder(profile);

	const unknown = asked.find(id => !ids.includes(id));
	if (unknown !== undefined)
		throw new Trouble(`--seat ${unknown}: this profile has the seats ${ids.join(', ')}. Name one of them.`);
	return [...asked];
}

/** What was plugged into a channel of the file, by that channel. */
export function replugged(profile: Profile, asked: readonly string[] = []): Map<string, string> {
	return new Map(
		asked.map(text => {
			const [place = '', channel = ''] = text.split('=');
			if (place === '' || !profile.channels.some(({id}) => id === channel))
				throw new Trouble(
					`--as ${text}: expected a channel of the file, =, and a channel of this profile, such as SiL=TpFL.`,
				);
			return [place, channel] as const;
		}),
	);
}

/** The microphone's curve, where one is named. */
export function microphoneOf(path: string | undefined) {
	if (path === undefined) return undefined;
	const {bytes, name} = readCurveFile(path);
	const curve = curveFromText(new TextDecoder().decode(bytes));
	if (!curve)
		throw new Trouble(
			`${path} holds no curve: expected lines with a frequency in hertz and a level in dB, three at least.`,
		);
	return {curve, name};
}

/** What a person says of single playings, by place from 0. */
export function namesFor(
	profile: Profile,
	asked: readonly string[] = [],
): Readonly<Record<number, PlayingName>> {
	const most = subGroups(profile).length;
	const seats = profile.seats.map(({id}) => id);
	return Object.fromEntries(
		asked.map(text => {
			const [, number, seat, changes] = /^(\d+)=([^:]+)(?::(\d+))?$/.exec(text) ?? [];
			const isSpare = seat === 'spare' && !seats.includes('spare');
			if (
				number === undefined ||
				Number(number) < 1 ||
				Number(changes ?? 0) > most ||
				!(isSpare || seats.includes(seat!))
			)
				throw new Trouble(
					`--playing ${text}: expected the number of a playing, =, and spare or a seat (${seats.join(', ')}), which a colon and how many groups of subs were changed, 0 to ${most}, may follow.`,
				);
			const name: PlayingName = isSpare
				? {isSpare}
				: {seat: seat!, ...(changes !== undefined && {changes: Number(changes)})};
			return [Number(number) - 1, name] as const;
		}),
	);
}
