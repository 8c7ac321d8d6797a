import {readSoundFile} from '../platform/soundFile.ts';
import {Trouble} from '../platform/trouble.ts';
import {referenceSeat} from '../profile/ask/seats.ts';
import type {Profile} from '../profile/types.ts';
import {curveFromText} from '../study/hearing/curveText.ts';

/** Seats in the order of the spots: those asked for, else the reference seat first. */
export function seatsFor(profile: Profile, asked: readonly string[] | undefined): string[] {
	const ids = profile.seats.map(({id}) => id);
	if (!asked || asked.length === 0) {
		const first = referenceSeat(profile).id;
		return [first, ...ids.filter(id => id !== first)];
	}

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
	const {bytes, name} = readSoundFile(path);
	const curve = curveFromText(new TextDecoder().decode(bytes));
	if (!curve)
		throw new Trouble(
			`${path} holds no curve: expected lines with a frequency in hertz and a level in dB, three at least.`,
		);
	return {curve, name};
}
