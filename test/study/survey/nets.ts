import type {ChannelId} from '../../../source/profile/channels.ts';
import type {Profile, TapeReading} from '../../../source/profile/types.ts';
import {nextReadings} from '../../../source/study/placement/guidedTape.ts';
import {adjustNetwork} from '../../../source/study/survey/adjust.ts';
import type {NetworkResult} from '../../../source/study/survey/result.ts';

/** Numbers from a seed. @see Steele, Lea and Flood, OOPSLA (2014): splitmix, here with 32 bits. */
export function randomFrom(seed: number) {
	let state = Math.imul(seed + 1, 0x9e3779b9) >>> 0;
	const uniform = () => {
		state = (state + 0x9e3779b9) >>> 0;
		let mixed = state;
		mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
		mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
		return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32;
	};

	return {
		uniform,
		between: (low: number, high: number) => low + (high - low) * uniform(),
		normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
	};
}

export type Random = ReturnType<typeof randomFrom>;
type Place = readonly [number, number, number];

/** A room with a 5.1 layout as people set it up, and what a tape held by hand reads in it. */
export type World = {
	readonly profile: Profile;
	readonly places: Readonly<Record<string, Place>>;
	readonly size: Place;
	/** One reading, metres, to the millimetre. */
	readonly read: (from: string, to: string) => number;
};

/** How far off an end is held along each axis, one standard deviation, metres. */
export type Hands = {readonly seat: number; readonly centre: number; readonly plane: number};

const axisOf: Readonly<Record<string, readonly [axis: 0 | 1 | 2, isFar: boolean]>> = {
	'wall:left': [0, false],
	'wall:right': [0, true],
	'wall:front': [1, false],
	'wall:back': [1, true],
	floor: [2, false],
	ceiling: [2, true],
};

/** A world from a seed: 3.4-5.4 × 4.2-7.0 × 2.3-2.9 m, angles within and a little outside what is recommended. */
export function worldOf(seed: number, hands: Hands, layout: '5.1' | '3.1' = '5.1'): World {
	const random = randomFrom(seed);
	const {between, normal} = random;
	const size: Place = [between(3.4, 5.4), between(4.2, 7), between(2.3, 2.9)];
	const seat: Place = [size[0] / 2 + between(-0.3, 0.3), size[1] * between(0.55, 0.72), between(0.95, 1.15)];
	const inside = (value: number, axis: 0 | 1 | 2) => Math.min(Math.max(value, 0.1), size[axis] - 0.1);
	const atAngle = (degrees: number, away: number, height: number): Place => {
		const angle = (degrees * Math.PI) / 180;
		return [inside(seat[0] - Math.sin(angle) * away, 0), inside(seat[1] - Math.cos(angle) * away, 1), height];
	};
	const front = seat[1] - between(0.35, 0.8);
	const places: Record<string, Place> = {
		sofa: seat,
		screen: [size[0] / 2 + between(-0.1, 0.1), between(0.02, 0.1), between(1, 1.3)],
		FC: [size[0] / 2 + between(-0.1, 0.1), between(0.2, 0.5), between(0.4, 0.9)],
	};
	for (const [id, sign] of [
		['FL', 1],
		['FR', -1],
	] as const) {
		const degrees = between(22, 34);
		places[id] = atAngle(sign * degrees, front / Math.cos((degrees * Math.PI) / 180), between(0.8, 1.15));
	}

	if (layout === '5.1') {
		places.LS = atAngle(between(95, 125), between(1.3, 2.2), between(1, 1.6));
		places.RS = atAngle(-between(95, 125), between(1.3, 2.2), between(1, 1.6));
	}

	places.sub1 = [between(0.3, 0.9), between(0.3, 0.8), between(0.2, 0.35)];
	const held = (end: string) => (end === 'sofa' ? hands.seat : hands.centre);
	const point = (end: string): Place => {
		const at = places[end]!;
		const off = held(end);
		return [at[0] + off * normal(), at[1] + off * normal(), at[2] + off * normal()];
	};
	const exactly = (from: string, to: string): number => {
		const [plane, other] = axisOf[from] ? [from, to] : [to, from];
		const facing = axisOf[plane];
		if (!facing) return Math.hypot(...point(from).map((value, axis) => value - point(to)[axis]!));
		const [axis, isFar] = facing;
		const off = hands.plane * normal();
		if (axisOf[other]) return size[axis] + off + hands.plane * normal();
		return off + (isFar ? size[axis] - point(other)[axis]! : point(other)[axis]!);
	};
	const channels: ChannelId[] = [
		'FL',
		'FR',
		'FC',
		...(layout === '5.1' ? (['LS', 'RS'] as const) : []),
		'LFE1',
	];
	return {
		profile: {
			format: 1,
			name: 'Simulated room',
			date: '2026-04-18',
			room: {name: 'Simulated room'},
			seats: [{id: 'sofa', name: 'Sofa', reference: true}],
			channels: channels.map(id => ({id})),
			subs: [{id: 'sub1', name: 'Sub', fedBy: 'LFE1'}],
			tape: [],
		},
		places,
		size,
		read: (from, to) => {
			const metres = exactly(from, to);
			const error = Math.hypot(0.002, 0.001 * metres) * normal();
			return Math.max(0.001, Math.round((metres + error) * 1e3) / 1e3);
		},
	};
}

/** A round as it is guided, reading by reading, until it says that it is enough. */
export function guidedRound(world: World, most = 90): {profile: Profile; after: NetworkResult[]} {
	let {profile} = world;
	const after = [adjustNetwork(profile)];
	for (let count = 0; count < most; count++) {
		const [next] = nextReadings(profile, 1, after.at(-1)!);
		if (!next) break;
		const {from, to} = next;
		profile = {...profile, tape: [...profile.tape!, {from, to, metres: world.read(from, to)}]};
		after.push(adjustNetwork(profile));
	}

	return {profile, after};
}

/** A profile with one reading changed. */
export const spoilt = (profile: Profile, at: number, metres: number): Profile => ({
	...profile,
	tape: profile.tape!.map((one, index): TapeReading => (index === at ? {...one, metres} : one)),
});
