import type {Profile, SettingsSet} from '../../source/profile/types.ts';
import type {BoxesState} from './boxes.ts';
import {lossOf} from './loss.ts';
import {type Draws, drawsOf} from './physics/random.ts';
import {addTo, emptySpectrum, type Spectrum} from './physics/spectrum.ts';
import {type MainId, subIds} from './places.ts';
import {decide, partedByLfe, type RecordedPart, recordedInto, responseGrid} from './product.ts';
import {roundIn} from './round.ts';
import {copied, type Session, typeIn} from './session.ts';
import {arriving, noiseLevel} from './sound.ts';
import type {World} from './world.ts';

export const changedWays = ['three fronts', 'two fronts'] as const;
export const oneWays = ['one playing', 'one playing, two fronts'] as const;
export type RecordedWay = (typeof changedWays)[number] | (typeof oneWays)[number];
const frontsOf: Readonly<Record<RecordedWay, readonly MainId[]>> = {
	'three fronts': ['FL', 'FR', 'FC'],
	'two fronts': ['FL', 'FR'],
	'one playing': ['FL', 'FR', 'FC'],
	'one playing, two fronts': ['FL', 'FR'],
};

/** What a recorded blend changed in one room: loss before minus after, dB, positive is better. */
export type RecordedRun = {
	readonly room: string;
	readonly kit: World['kit'];
	readonly way: RecordedWay;
	readonly gains: Readonly<Record<'FL' | 'FR' | 'FC', number>>;
	/** `lacks`: the LFE sweep and the others did not agree, so nothing was asked for. */
	readonly verdict: 'lacks' | 'stands' | 'kept' | 'put back';
};

/**
How far what a recording tells of a part lies from the truth, dB: what a microphone makes that stands still between
two playings; the parts of played rounds came out within -50 to -65 dB of the truth (`test/study/hearing/apart.test.ts`).
*/
const errorDb = -40;

/** A round through tape and meter, then one recorded at the seat, its blend typed in, recorded once more, kept or put back. */
export function recordedRuns(world: World, ways: readonly RecordedWay[]): RecordedRun[] {
	const {session} = roundIn(world, 'none');
	return ways.map(way => recordedRun(copied(session, way), way));
}

function recordedRun(session: Session, way: RecordedWay): RecordedRun {
	const {world} = session;
	const draws = session.draws.branch('recorded');
	const fronts = frontsOf[way];
	const before = session.boxes;
	const isOne = way === 'one playing' || way === 'one playing, two fronts';
	const record = (boxes: BoxesState) => {
		const parts = partsOf(world, boxes, fronts, draws);
		if (!isOne) return parts;
		const lines = parts.map(({channel, all, levelDb}) => ({channel, all, levelDb}));
		return partedByLfe(session.profile, session.inForce, lines, lfeOf(world, boxes, draws));
	};
	const first = record(before);
	session.profile = recordedInto(session.profile, first, session.inForce, 1);
	if (first.every(({main}) => !main))
		return {room: world.seed, kit: world.kit, way, gains: {FL: 0, FR: 0, FC: 0}, verdict: 'lacks'};
	const wished = decide(session.profile, 'recorded');
	const isChanged =
		JSON.stringify(subsIn(wished)) !== JSON.stringify(subsIn(setOf(session.profile, session.inForce)));
	if (!isChanged)
		return {room: world.seed, kit: world.kit, way, gains: {FL: 0, FR: 0, FC: 0}, verdict: 'stands'};
	typeIn(session, wished);
	const tried = session.boxes;
	// One more playing tells what sounds together, and no more unless it has an LFE sweep.
	const again = record(tried);
	const once = isOne ? again : again.map(({channel, all, levelDb}) => ({channel, all, levelDb}));
	session.profile = recordedInto(session.profile, once, session.inForce, 2);
	typeIn(session, decide(session.profile, 'end'));
	const after = session.boxes;
	const gain = (id: MainId) => lossOf(world, before, id) - lossOf(world, after, id);
	const isBack = JSON.stringify(subsIn(setOf(session.profile, 'end'))) !== JSON.stringify(subsIn(wished));
	return {
		room: world.seed,
		kit: world.kit,
		way,
		gains: {FL: gain('FL'), FR: gain('FR'), FC: gain('FC')},
		verdict: isBack ? 'put back' : 'kept',
	};
}

const setOf = ({settings}: Profile, id: string) => settings!.find(set => set.id === id)!;
/** What stands for the subs, as typed in. */
const subsIn = ({channels, outputs = {}}: SettingsSet) =>
	[channels.LFE1, ...Object.values(outputs)].map(one => [
		one?.delayMs?.stepped,
		one?.polarityInverted ?? false,
		(one as {distanceMetres?: {stepped: number}} | undefined)?.distanceMetres?.stepped,
	]);

/** Each front's speaker and each sub as a recording at the seat tells them, a little wrong, and the level in the middle. */
function partsOf(world: World, boxes: BoxesState, fronts: readonly MainId[], draws: Draws): RecordedPart[] {
	const grid = responseGrid();
	const {seat} = world.places;
	const crossoverOf = (id: MainId) => boxes.channels[id]!.crossoverHertz as number;
	// With one crossover every front says the same of the subs: it is kept once.
	const isFirst = (id: MainId) => fronts.find(other => crossoverOf(other) === crossoverOf(id)) === id;
	return fronts.map(id => {
		const of = (source: MainId | (typeof subIds)[number]) =>
			arriving(world, boxes, id, source, seat, grid) ?? emptySpectrum(grid.length);
		const main = of(id);
		const all = emptySpectrum(grid.length);
		addTo(all, main);
		for (const sub of subIds) addTo(all, of(sub));
		const wrong = (part: Spectrum) => moved(part, grid, draws);
		return {
			channel: id,
			all: wrong(all),
			main: wrong(main),
			...(isFirst(id) && {
				crossoverHertz: crossoverOf(id),
				subs: Object.fromEntries(subIds.map(sub => [sub, wrong(of(sub))])),
			}),
			levelDb: noiseLevel(world, boxes, {into: [id], on: [id]}, [355, 2818], seat, 'Z') + draws.gauss(0.1),
		};
	});
}

/** Where somebody set the boxes up: how far a low-pass and the LFE level may be from what is stated. */
const lowPassOff = 0.05;
const lfeLevelOffDb = 0.5;

/** What the LFE sweep brings: all subs through the channel's low-pass, 10 dB louder; a little off with a hidden kit. */
function lfeOf(world: World, boxes: BoxesState, draws: Draws): Spectrum {
	const grid = responseGrid();
	const kit = drawsOf(`${world.seed} lfe`);
	const isHidden = world.kit === 'hidden';
	const hertz = boxes.lfeLowPassHertz * (isHidden ? kit.uniform(1 - lowPassOff, 1 + lowPassOff) : 1);
	const raise = 10 ** ((10 + (isHidden ? kit.uniform(-lfeLevelOffDb, lfeLevelOffDb) : 0)) / 20);
	const sum = emptySpectrum(grid.length);
	for (const sub of subIds) {
		const part = arriving(world, {...boxes, lfeLowPassHertz: hertz}, 'LFE1', sub, world.places.seat, grid);
		if (part) addTo(sum, part);
	}

	return moved({re: sum.re.map(value => value * raise), im: sum.im.map(value => value * raise)}, grid, draws);
}

/** A part with a false path in it, of any delay within 30 ms and either sign: smooth over frequency, as such errors are. */
function moved(part: Spectrum, grid: ArrayLike<number>, draws: Draws): Spectrum {
	const result = {re: Float64Array.from(part.re), im: Float64Array.from(part.im)};
	const delayMs = draws.uniform(0, 30);
	const size = 10 ** (errorDb / 20) * (draws.chance(0.5) ? 1 : -1);
	for (let index = 0; index < grid.length; index++) {
		const angle = (-2 * Math.PI * grid[index]! * delayMs) / 1000;
		const [c, s] = [size * Math.cos(angle), size * Math.sin(angle)];
		result.re[index]! += part.re[index]! * c - part.im[index]! * s;
		result.im[index]! += part.re[index]! * s + part.im[index]! * c;
	}

	return result;
}
