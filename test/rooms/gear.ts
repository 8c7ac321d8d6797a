import type {TwoWay} from './physics/filters.ts';
import type {Draws} from './physics/random.ts';
import {type MainId, mainIds, type Places, type SubId, subIds} from './places.ts';

/**
- `known`: every latency, polarity and box is as the profile states.
- `hidden`: subs with 1 to 8 ms that nobody states, half of them turned, boxes up to 10 % off, Q 0.6 to 0.95.
- `anechoic`: hidden, and no walls.
*/
export type KitKind = 'known' | 'hidden' | 'anechoic';

export type SpeakerTruth = {
	/** Level of the test signal at 1 m in free field with everything at 0, dB. */
	readonly levelDb: number;
	readonly lowHertz: number;
	readonly q: number;
	/** What the profile states of the box. */
	readonly statedLowHertz: number;
	readonly twoWay?: TwoWay;
};

export type SubTruth = {
	readonly levelDb: number;
	readonly lowHertz: number;
	readonly statedLowHertz: number;
	readonly upperHertz: number;
	readonly unstatedLatencyMs: number;
	readonly isTurned: boolean;
};

export type Gear = {
	readonly mains: Readonly<Record<MainId, SpeakerTruth>>;
	readonly subs: Readonly<Record<SubId, SubTruth>>;
	readonly receiver: 'fine-metric' | 'fine-feet' | 'fine-delay';
	readonly processorLatencyMs: number;
};

/** Speakers of a room: fronts and surrounds as pairs of one make, levels up to some dB apart. */
export function drawGear(places: Places, kit: KitKind, draws: Draws): Gear {
	const isHidden = kit !== 'known';
	const hidden = draws.branch('hidden');
	const tries = draws.branch('boxes');
	const makes = new Map<string, Omit<SpeakerTruth, 'levelDb' | 'lowHertz' | 'q'>>();
	const makeOf = (id: MainId) => {
		const make = id.startsWith('Tp')
			? 'top'
			: id === 'FC'
				? 'centre'
				: id.startsWith('F')
					? 'front'
					: 'surround';
		if (!makes.has(make)) {
			const [low, high] = make === 'front' ? [50, 75] : make === 'centre' ? [60, 90] : [70, 110];
			const order = tries.chance(0.5) ? 2 : 4;
			makes.set(make, {
				statedLowHertz: Math.round(tries.uniform(low, high)),
				...(tries.chance(0.7) && {
					twoWay: {hertz: tries.uniform(1800, 3200), order, tweeterTurned: order === 2},
				}),
			});
		}

		return makes.get(make)!;
	};
	const mains = Object.fromEntries(
		mainIds.map(id => {
			const make = makeOf(id);
			const metres = Math.hypot(...places.at[id].map((value, axis) => value - places.seat[axis]!));
			const off = hidden.uniform(0.9, 1.1);
			const q = hidden.uniform(0.6, 0.95);
			const speaker: SpeakerTruth = {
				...make,
				levelDb: 75 + 20 * Math.log10(metres) + draws.gauss(2),
				lowHertz: make.statedLowHertz * (isHidden ? off : 1),
				q: isHidden ? q : Math.SQRT1_2,
			};
			return [id, speaker];
		}),
	) as Record<MainId, SpeakerTruth>;
	const statedLowHertz = Math.round(tries.uniform(20, 30));
	const upperHertz = tries.uniform(150, 250);
	const subs = Object.fromEntries(
		subIds.map(id => {
			const latency = hidden.uniform(1, 8);
			const turned = hidden.chance(0.5);
			const off = hidden.uniform(0.9, 1.1);
			const metres = Math.hypot(...places.at[id].map((value, axis) => value - places.seat[axis]!));
			const sub: SubTruth = {
				levelDb: 72 + 20 * Math.log10(metres) + draws.gauss(2),
				statedLowHertz,
				lowHertz: statedLowHertz * (isHidden ? off : 1),
				upperHertz,
				unstatedLatencyMs: isHidden ? latency : 0,
				isTurned: isHidden && turned,
			};
			return [id, sub];
		}),
	) as Record<SubId, SubTruth>;
	return {
		mains,
		subs,
		receiver: draws.pick(['fine-metric', 'fine-feet', 'fine-delay'] as const),
		processorLatencyMs: 5.2,
	};
}
