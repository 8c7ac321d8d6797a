import type {Profile} from '../../source/profile/types.ts';
import {type Holding, heldLength} from './instruments.ts';
import type {Draws} from './physics/random.ts';
import {drawsOf} from './physics/random.ts';
import {accusedReadings, checkedThings, nextTape, surveyProfile} from './surveyProduct.ts';
import type {BareRoom} from './world.ts';

/** Ends held to about a centimetre: the ear, a speaker's centre, a wall. */
export const heldToACentimetre: Holding = {seat: 0.012, speaker: 0.007, wall: 0.007};

/** Blunders that are planted, metres. */
const foot = 0.3048;
const tenCentimetres = 0.1;

/** What happened to one net of tape readings. */
export type NetRun = {
	readonly room: string;
	readonly readings: number;
	/** A clean round, finished: whether any reading is accused. */
	readonly isAccused: boolean;
	/** After a foot or 10 cm in one reading of the finished round: noticed at all; the right one named, alone or as one of several. */
	readonly foot: Noticed;
	readonly ten: Noticed;
	/** A foot in a reading between points that were called checked at that moment; undefined where none was. */
	readonly footAtAnyTime?: Noticed;
};

export type Noticed = {
	readonly isNoticed: boolean;
	readonly isNamed: boolean;
	readonly isInnocentNamed: boolean;
};

const mostReadings = 90;
/** Readings asked for at a time: the plan does not hang on a millimetre. */
const atOnce = 6;

/** Length as the tape shows it: its ends as they are held, its own scatter, to the millimetre. */
function readOnce(room: BareRoom, from: string, to: string, holding: Holding, draws: Draws): number {
	const truth = heldLength(
		{places: room.places, sizeMetres: room.build.sizeMetres},
		from,
		to,
		holding,
		draws,
	);
	return Math.round((truth + draws.gauss(Math.hypot(0.002, 0.001 * truth))) * 1000) / 1000;
}

/** A whole round as the product asks for it. */
function finished(room: BareRoom, holding: Holding, draws: Draws): Profile {
	let profile = surveyProfile(room);
	while ((profile.tape?.length ?? 0) < mostReadings) {
		const asked = nextTape(profile, atOnce);
		if (asked.length === 0) break;
		const taken = asked.map(({from, to}) => ({from, to, metres: readOnce(room, from, to, holding, draws)}));
		profile = {...profile, tape: [...(profile.tape ?? []), ...taken]};
	}

	return profile;
}

const upTo = (profile: Profile, count: number): Profile => ({
	...profile,
	tape: profile.tape!.slice(0, count),
});

function planted(profile: Profile, index: number, metres: number): Noticed {
	const tape = profile.tape!.map((reading, place) =>
		place === index ? {...reading, metres: Math.max(0.01, reading.metres + metres)} : reading,
	);
	const accused = accusedReadings({...profile, tape});
	return {
		isNoticed: accused.length > 0,
		isNamed: accused.some(({indices}) => indices.includes(index)),
		isInnocentNamed: accused.some(({indices}) => !indices.includes(index)),
	};
}

export function netRun(room: BareRoom, holding: Holding = heldToACentimetre): NetRun {
	const draws = drawsOf(`net ${room.seed}`);
	const profile = finished(room, holding, draws);
	const count = profile.tape!.length;
	const slips = draws.branch('slips');
	const any = () => Math.floor(slips.uniform(0, count));
	const sign = () => (slips.chance(0.5) ? 1 : -1);
	const part = upTo(profile, Math.floor(slips.uniform(8, count)));
	const checked = checkedThings(part);
	const isChecked = (end: string) =>
		end.includes(':') || end === 'floor' || end === 'ceiling' || checked.has(end);
	const open = part.tape!.flatMap(({from, to}, index) =>
		[from, to].every(isChecked) && [from, to].some(end => checked.has(end)) ? [index] : [],
	);
	return {
		room: room.seed,
		readings: count,
		isAccused: accusedReadings(profile).length > 0,
		foot: planted(profile, any(), sign() * foot),
		ten: planted(profile, any(), sign() * tenCentimetres),
		...(open.length > 0 && {footAtAnyTime: planted(part, slips.pick(open), sign() * foot)}),
	};
}
