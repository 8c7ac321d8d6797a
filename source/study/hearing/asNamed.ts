import type {HeardPlaying} from './heardPlaying.ts';

/**
A playing whose lines carry the names of the profile's channels: surrounds that the file has at the sides, and what was plugged
elsewhere on purpose.

@param nameOf - From the file's place to the profile's channel; the same where it has none other.
*/
export function asNamed(playing: HeardPlaying, nameOf: (place: string) => string): HeardPlaying {
	return {
		...playing,
		lines: playing.lines.map(line => ({...line, channel: nameOf(line.channel)})),
		findings: playing.findings.map(each => ({
			...each,
			about: each.about.map(nameOf),
		})) as typeof playing.findings,
	};
}

/** The profile's channel behind each place of a file. */
export function channelNamer(
	channels: ReadonlyArray<{readonly id: string}>,
	replugged: ReadonlyMap<string, string> = new Map(),
): (place: string) => string {
	const own = new Set(channels.map(({id}) => id));
	return place => {
		const other = replugged.get(place);
		if (other !== undefined) return other;
		if (own.has(place)) return place;
		const surround = place === 'SiL' ? 'LS' : place === 'SiR' ? 'RS' : place;
		return own.has(surround) ? surround : place;
	};
}
