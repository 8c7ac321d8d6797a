import type {Gear} from './gear.ts';
import type {Point} from './physics/box.ts';
import {butterworthHigh, butterworthLow, closedBox, twoWay} from './physics/filters.ts';
import {product, type Spectrum} from './physics/spectrum.ts';
import {type MainId, mainIds, type SourceId} from './places.ts';
import {bassHertz, type RoomSound, type TrebleGrid} from './roomSound.ts';

/** What is heard of every speaker and sub at any point, with its box; without receiver and processor. */
export type Acoustics = {
	/** Complex response at the grid of the bass. */
	bass(source: SourceId, point: Point): Spectrum;
	/** Complex response at any frequencies up to 500 Hz. */
	at(source: SourceId, point: Point, frequencies: ArrayLike<number>): Spectrum;
	/** |H|²; between 300 and 3000 Hz where no band is given. */
	treble(source: MainId, point: Point, band?: readonly [number, number]): TrebleGrid;
};

const isMain = (id: SourceId): id is MainId => (mainIds as readonly string[]).includes(id);

/** The speaker's or sub's own response. */
export function ownResponse(gear: Gear, id: SourceId, frequencies: ArrayLike<number>): Spectrum {
	if (isMain(id)) {
		const speaker = gear.mains[id];
		const box = closedBox(frequencies, speaker.lowHertz, speaker.q);
		return speaker.twoWay ? product(box, twoWay(frequencies, speaker.twoWay)) : box;
	}

	const sub = gear.subs[id];
	return product(
		butterworthHigh(frequencies, sub.lowHertz, 4),
		butterworthLow(frequencies, sub.upperHertz, 2),
	);
}

const usualTreble = [300, 3000] as const;

/** The speakers of a kit in a room. */
export function acousticsOf(room: RoomSound, gear: Gear): Acoustics {
	const known = new Map<string, unknown>();
	const once = <T>(kind: string, source: SourceId, point: Point, compute: () => T): T => {
		const key = `${kind} ${source} ${point.join(' ')}`;
		if (!known.has(key)) known.set(key, compute());
		return known.get(key) as T;
	};
	return {
		at: (id, point, frequencies) =>
			product(room.at(id, point, frequencies), ownResponse(gear, id, frequencies)),
		bass: (id, point) =>
			once('bass', id, point, () => product(room.bass(id, point), ownResponse(gear, id, bassHertz))),
		treble: (id, point, band = usualTreble) =>
			once(`treble ${band.join(' ')}`, id, point, () => {
				const {hertz, power} = room.treble(id, point, band);
				const own = ownResponse(gear, id, hertz);
				return {
					hertz,
					power: power.map((value, index) => value * (own.re[index]! ** 2 + own.im[index]! ** 2)),
				};
			}),
	};
}
