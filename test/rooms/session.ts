import type {MeterReading, Profile, SettingsSet} from '../../source/profile/types.ts';
import {type BoxesState, boxesOf} from './boxes.ts';
import {type Holding, heldExactly, heldLength, readMeter, readTape} from './instruments.ts';
import type {Point} from './physics/box.ts';
import {type Draws, drawsOf} from './physics/random.ts';
import {mainIds, subIds} from './places.ts';
import {type Asked, readingOf, startProfile} from './product.ts';
import type {World} from './world.ts';

/** Somebody with tape and meter in a room: the profile as it grows, and what truly stands in the boxes. */
export type Session = {
	readonly world: World;
	readonly draws: Draws;
	profile: Profile;
	boxes: BoxesState;
	/** Id of the set that is believed to stand. */
	inForce: string;
};

export function beginSession(world: World): Session {
	const profile = startProfile(world);
	const [found] = profile.settings as [SettingsSet];
	return {world, draws: drawsOf(`session ${world.seed}`), profile, boxes: boxesOf(found), inForce: found.id};
}

/** The same person at the same moment, to try something without consequences. */
export const copied = (session: Session, name: string): Session => ({
	...session,
	draws: session.draws.branch(name),
});

/** Measures how far each speaker and sub is from the seat. */
export function tapeDistances(session: Session, holding: Holding = heldExactly): void {
	const {world, draws} = session;
	const tape = [...mainIds, ...subIds].map(id => ({
		from: id,
		to: 'seat1',
		metres: readTape(heldLength(world, id, 'seat1', holding, draws), draws),
	}));
	session.profile = {...session.profile, tape: [...(session.profile.tape ?? []), ...tape]};
}

/** Takes a reading and writes it down. */
export function take(
	session: Session,
	asked: Asked,
	{round = 'first', point}: {readonly round?: MeterReading['round']; readonly point?: Point} = {},
): number {
	const {world, boxes, draws, profile, inForce} = session;
	const decibels = readMeter(world, boxes, asked.playing, asked.signal, draws, point);
	session.profile = {
		...profile,
		meter: [...(profile.meter ?? []), readingOf(asked, decibels, inForce, round)],
	};
	return decibels;
}

/** Stores a set as decided and types it in, perhaps with a slip of the fingers. */
export function typeIn(
	session: Session,
	set: SettingsSet,
	slip: (set: SettingsSet) => SettingsSet = same => same,
): void {
	session.profile = {...session.profile, settings: [...(session.profile.settings ?? []), set]};
	session.inForce = set.id;
	session.boxes = boxesOf(slip(set));
}
