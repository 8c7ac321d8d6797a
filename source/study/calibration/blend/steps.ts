import {mainChannels} from '../../../profile/ask/lines.ts';
import {referenceSeat} from '../../../profile/ask/seats.ts';
import {subsOf} from '../../../profile/ask/subs.ts';
import {channelNames} from '../../../profile/channels.ts';
import {listed, nameOf} from '../../../profile/names.ts';
import type {MeterReading, Profile} from '../../../profile/types.ts';
import {inMs} from '../words.ts';
import {type BlendGroups, pairId} from './groups.ts';
import type {StandingSet} from './standing.ts';
import {countTaken} from './taken.ts';

/** One reading of the guided procedure, as data for a screen or a list. */
export type BlendStep = {
	/** Stable: pair, part, tone and added delay. */
	readonly id: string;
	readonly pair: string;
	readonly part: 'still' | 'moved' | 'both' | 'both later' | 'separate';
	/** Goes into the meter reading as it is. */
	readonly source: MeterReading['source'];
	readonly seat: string;
	readonly hertz: number;
	/** Delay of the moved group to add for this reading, ms; take it off afterwards. */
	readonly addedDelayMs: number;
	/** Receiver channel that the tone is played into. */
	readonly playInto: string;
	/** What to mute or unplug. Changes only between blocks of steps. */
	readonly prepare: string;
	readonly how: string;
	readonly why: string;
	/** Readings of it in the profile. */
	readonly taken: number;
};

/** Shown before the first tone. */
export const blendCautions = [
	'Tones sound softer than they are. Turn the master volume down before the first one, then up slowly to about 75 dB at the seat.',
	'Low tones move cones far. Stop at once when a speaker buzzes or clacks, and play no tone for longer than half a minute.',
	'Switch the receiver off before you unplug or plug a speaker lead. Sub leads: sub off first.',
	'Keep ears away from a speaker that is playing, and wear protection above 85 dB.',
] as const;

const howToRead =
	'Meter on a stand at ear height, C slow. Let the tone stand for 5 s, then read the mean of the next 5 s.';

/**
Tones about a crossover: a third of an octave below, at it, and a third above, in whole hertz.
Three tones tell polarity from delay, and near the crossover both sides are about as loud.
*/
export function blendTones(crossoverHertz: number): readonly number[] {
	return [0.8, 1, 1.25].map(factor => Math.round(crossoverHertz * factor));
}

/** The pairs that a room should be blended by: each sub with those before it, then all subs with the centre or the front. */
export function plannedPairs(profile: Profile): BlendGroups[] {
	const subs = subsOf(profile).map(({id}) => id);
	if (subs.length === 0) return [];
	const mains = mainChannels(profile).map(({id}) => id as string);
	const front = mains.includes('FC') ? ['FC'] : ['FL', 'FR'].filter(id => mains.includes(id));
	const still = front.length > 0 ? front : mains.slice(0, 1);
	return [
		...subs
			.slice(1)
			.map((id, index): BlendGroups => ({kind: 'subs', still: subs.slice(0, index + 1), moved: [id]})),
		...(still.length > 0 ? [{kind: 'mains', still, moved: subs} as const] : []),
	];
}

const single = (ids: readonly string[]) => (ids.length === 1 ? ids[0]! : [...ids]);

/**
The readings of one pair in the order that needs the fewest hands on plugs: one group at all tones, the other at all
tones, both at all tones, and both with a known delay added.

@param tones - Hertz, from `tonesToRead`.
@param laterMs - The known delay, ms; 0 where no box can add one, and then that block is left out.
@param standing - Settings that stand now, where known.
*/
export function pairSteps(
	profile: Profile,
	groups: BlendGroups,
	tones: readonly number[],
	laterMs: number,
	standing?: StandingSet,
): BlendStep[] {
	const {still, moved, kind} = groups;
	const seat = referenceSeat(profile).id;
	const pair = pairId(groups);
	const subs = subsOf(profile);
	const playInto = kind === 'mains' ? still[0]! : subs.find(({id}) => id === moved[0])!.fedBy;
	const nameOne = (id: string) =>
		(channelNames as Readonly<Record<string, string>>)[id] ?? nameOf(profile, id);
	const names = (ids: readonly string[]) => listed(ids.map(nameOne));
	const only = (ids: readonly string[]) => `Only ${names(ids)} ${ids.length === 1 ? 'plays' : 'play'}`;
	const others = subs.map(({id}) => id).filter(id => ![...still, ...moved].includes(id));
	const alsoOff = others.length > 0 ? ` ${names(others)} ${others.length === 1 ? 'stays' : 'stay'} off.` : '';
	const [stillOff, movedOff] =
		kind === 'mains'
			? [
					`Receiver off, unplug the ${still.length === 1 ? 'lead' : 'leads'} of ${names(still)} and keep the bare ends apart, receiver on.`,
					`Switch off ${names(moved)}.`,
				]
			: [`Switch off ${names(still)}.`, `Switch off ${names(moved)}.`];
	const step = (
		part: BlendStep['part'],
		sides: ReadonlyArray<readonly string[]>,
		hertz: number,
		addedDelayMs: number,
		prepare: string,
		why: string,
	): BlendStep => ({
		id: `${pair} ${part} ${hertz}${addedDelayMs === 0 ? '' : ` ${addedDelayMs}`}`,
		pair,
		part,
		source: single(sides.flat()),
		seat,
		hertz,
		addedDelayMs,
		playInto,
		prepare: `${prepare}${alsoOff}`,
		how: howToRead,
		why,
		taken: countTaken(profile, standing, seat, sides, hertz, addedDelayMs),
	});
	const sides = [still, moved];
	const both = sides.flat();
	return [
		...tones.map(hertz =>
			step('still', [still], hertz, 0, `${only(still)}. ${movedOff}`, 'How loud one side is alone.'),
		),
		...tones.map(hertz =>
			step(
				'moved',
				[moved],
				hertz,
				0,
				`${only(moved)}; the tone still goes into ${nameOne(playInto)}. ${stillOff}`,
				'How loud the other side is alone.',
			),
		),
		...tones.map(hertz =>
			step(
				'both',
				sides,
				hertz,
				0,
				`${names(both)} play. Everything plugged and on, volume untouched.`,
				'The level of both shows the angle between them, but not its sign.',
			),
		),
		...(laterMs === 0
			? []
			: tones.map(hertz =>
					step(
						'both later',
						sides,
						hertz,
						laterMs,
						`${names(both)} play, ${names(moved)} with ${inMs(laterMs)} of delay ${laterMs > 0 ? 'added' : 'taken off'} for these readings.`,
						'A known delay tells the angle from its mirror image.',
					),
				)),
	];
}
