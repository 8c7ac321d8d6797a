import {channelLatency, totalLatency} from '../../profile/ask/latency.ts';
import {effectOf, lineOf, orElse} from '../../profile/ask/lines.ts';
import {otherSide} from '../../profile/ask/otherSide.ts';
import type {SetInForce} from '../../profile/ask/settings.ts';
import {isLfe} from '../../profile/channels.ts';
import type {Profile} from '../../profile/types.ts';
import type {ExpectedLine} from './againstTape.ts';

/**
What tape, stated latencies and the settings in force say of each main line.

@param distances - By channel, metres; those that are missing were not taped.
@param inForce - Settings that stood; where nobody says, delays count as none.
*/
export function expectedLines(
	profile: Profile,
	distances: ReadonlyMap<string, {readonly metres: number; readonly sigmaMetres: number}>,
	inForce: SetInForce | undefined,
	metresPerSecond: number,
): ExpectedLine[] {
	return profile.channels
		.filter(({id}) => !isLfe(id))
		.map(({id}): ExpectedLine => {
			const effect = effectOf(profile, inForce, lineOf(profile, id));
			// A set that states no delay of this line leaves open when it should sound.
			const isOpen = inForce !== undefined && effect.delayMs === 'unstated';
			const distance = isOpen ? undefined : distances.get(id);
			const twin = otherSide(id);
			return {
				channel: id,
				...(distance && {
					flightMs: (1000 * distance.metres) / metresPerSecond,
					sigmaMs: (1000 * distance.sigmaMetres) / metresPerSecond,
				}),
				latencyMs: totalLatency(channelLatency(profile, id)),
				delayMs: orElse(effect.delayMs, 0),
				isInverted: effect.isInverted,
				...(twin !== undefined && {twin}),
			};
		});
}
