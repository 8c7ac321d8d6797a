import {receiverOf, timingControl} from '../../../profile/ask/boxes.ts';
import {boxState, delayOf, isInverted} from '../../../profile/ask/boxState.ts';
import {lineOf} from '../../../profile/ask/lines.ts';
import {meterKey, type Observations} from '../../../profile/ask/readings.ts';
import {settingsInForce} from '../../../profile/ask/settings.ts';
import type {MeterReading, Profile} from '../../../profile/types.ts';

/** How far delays between subs may be off for a reading of all to count, ms; a tenth of a turn at 100 Hz costs 0.4 dB. */
const usualToleranceMs = 0.6;

/** Delay and polarity of a sub on top of what distances give, ms. */
export type SubWish = {readonly laterMs: number; readonly isInverted: boolean};

/** Settings written into the readings themselves are the same where their words are. */
function setKey({inForce}: MeterReading): string | undefined {
	return typeof inForce === 'string' ? inForce : JSON.stringify(inForce);
}

/**
Readings of all subs together that count: taken under the delays and polarities that are to stand, and of these the
ones under the newest settings. Under others they would say how the subs added up then.

@param name - The subs' name among the observations.
@param arrivalsMs - Of subs without any delay dialled in, ms; where one is missing nothing is known and all count.
@param wishes - By sub, what was verified; where absent all are to arrive at once, one way round.
*/
export function countingTogether(
	profile: Profile,
	observations: Observations,
	seat: string,
	name: string,
	ids: readonly string[],
	arrivalsMs: ReadonlyMap<string, number>,
	wishes: ReadonlyMap<string, SubWish>,
): {readonly observations: Observations; readonly dropped: number} {
	const key = meterKey(seat, name);
	const readings = observations.meter.get(key) ?? [];
	const isPlaced = ids.every(id => arrivalsMs.has(id));
	const lines = ids.map(id => lineOf(profile, id));
	const timing = timingControl(receiverOf(profile).receiver);
	const toleranceMs =
		usualToleranceMs + timing.delay.step / 2 + (profile.bassProcessor?.delay.stepMs ?? 0) / 2;
	const isJoined = (i: number) =>
		lines[i]!.output === lines[0]!.output && lines[i]!.channel === lines[0]!.channel;
	const isStanding = (reading: MeterReading) => {
		const set = settingsInForce(profile, reading);
		if (!set || !isPlaced) return true;
		const state = boxState(profile, set);
		const at = ids.map(
			(id, i) => arrivalsMs.get(id)! + delayOf(state, lines[i]!) - (wishes.get(id)?.laterMs ?? 0),
		);
		const turned = ids.map((id, i) => isInverted(state, lines[i]!) !== (wishes.get(id)?.isInverted ?? false));
		return ids.every(
			(_, i) => isJoined(i) || (Math.abs(at[i]! - at[0]!) <= toleranceMs && turned[i] === turned[0]),
		);
	};
	const standing = readings.filter(isStanding);
	const newest = standing.at(-1);
	const counting = standing.filter(reading => setKey(reading) === setKey(newest!));
	const meter = new Map(observations.meter);
	if (counting.length > 0) meter.set(key, counting);
	else meter.delete(key);
	return {observations: {...observations, meter}, dropped: readings.length - standing.length};
}
