import type {Line} from '../../../profile/ask/lines.ts';
import {standingSettings} from '../../../profile/ask/settings.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import type {ChannelId, Profile, SettingsSet} from '../../../profile/types.ts';

/** Polarity of the lines without any blend. */
export type PlainPolarities = {
	/** Of a channel of the receiver; absent where nothing says. */
	readonly ofChannel: (id: ChannelId) => boolean | undefined;
	/** Of an output of the bass processor. */
	readonly ofOutput: (id: string) => boolean | undefined;
};

/**
What distances alone leave of polarity: they turn nothing. A set that was computed here never lends its polarity to a
new delay; one found in the boxes or typed in by hand tells how the room is wired, and stays.
*/
export function plainPolarities(profile: Profile): PlainPolarities {
	const decided = standingSettings(profile);
	const found = profile.settings?.findLast(({origin}) => origin !== 'solved');
	const feeds = new Set<string>(subsOf(profile).map(({fedBy}) => fedBy));
	const statedOf = (in_: (set: SettingsSet | undefined) => boolean | undefined) => {
		const stated = in_(found) ?? in_(decided);
		// What a computed set turned is turned back in words, so that it is typed in.
		return in_(found) === undefined && stated ? false : stated;
	};
	return {
		ofChannel: id =>
			feeds.has(id)
				? statedOf(set => set?.channels[id]?.polarityInverted)
				: decided?.channels[id]?.polarityInverted,
		ofOutput: id => statedOf(set => set?.outputs?.[id]?.polarityInverted),
	};
}

/** Whether a line is turned without any blend. */
export function plainlyTurned(profile: Profile): (line: Line) => boolean {
	const {ofChannel, ofOutput} = plainPolarities(profile);
	return ({channel, output}) =>
		(ofChannel(channel as ChannelId) ?? false) !== (output !== undefined && (ofOutput(output) ?? false));
}
