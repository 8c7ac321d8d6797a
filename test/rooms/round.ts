import type {SettingsSet} from '../../source/profile/types.ts';
import {besideSeat, readMeter, trueLevel} from './instruments.ts';
import {type Losses, lossesOf, lossOf} from './loss.ts';
import type {Point} from './physics/box.ts';
import {weightingC} from './physics/filters.ts';
import {
	askedForBlend,
	askedForPair,
	askedLevels,
	decide,
	playingOf,
	promisedLevels,
	subBand,
	type Way,
} from './product.ts';
import {beginSession, type Session, take, tapeDistances, typeIn} from './session.ts';
import type {World} from './world.ts';

/** Readings of one source under the same settings, one after the other. */
const repeats = 2;
/** No procedure asks for more. */
const mostReadings = 120;

/** A level that was promised, against what a meter reads with the settings typed in. */
export type Promised = {readonly errorDb: number; readonly sigmaDb: number};

/** All that one round from the first tape to the last change at the boxes showed. */
export type Round = {
	readonly session: Session;
	readonly found: SettingsSet;
	/** What stands in the end. */
	readonly final: SettingsSet;
	readonly losses: {readonly distances: Losses; readonly blended: Losses};
	/** Both subs against the target, dB; whether the product then called the sum known. */
	readonly together: {readonly beforeDb: number; readonly afterDb: number};
	readonly blendReadings: number;
	readonly promisedAtSpot: readonly Promised[];
	readonly promisedBeside: readonly Promised[];
};

const targetDb = 75;

/** Both subs in their band against the target, dB: as a meter shows it on C, where even pink noise at the target would read 0. */
function togetherDb({world, boxes}: Session): number {
	const {fromHertz, toHertz} = subBand;
	return (
		trueLevel(world, boxes, playingOf(['sub1', 'sub2']), subBand) - targetDb - pinkOnC(fromHertz, toHertz)
	);
}

/** What C weighting takes from even pink noise, dB. */
function pinkOnC(fromHertz: number, toHertz: number): number {
	const steps = 200;
	let energy = 0;
	for (let step = 0; step < steps; step++)
		energy += weightingC(fromHertz * (toHertz / fromHertz) ** ((step + 0.5) / steps)) ** 2 / steps;
	return 10 * Math.log10(energy);
}

/**
One round through the product: tape, levels, settings, both subs together under them, settings, the blend as it asks until
it asks no more, settings.
*/
export function roundIn(world: World, way: Way | 'none' = 'tones'): Round {
	const session = beginSession(world);
	const found = session.profile.settings![0]!;
	tapeDistances(session);
	for (const asked of askedLevels()) for (let count = 0; count < repeats; count++) take(session, asked);
	typeIn(session, decide(session.profile, 'distances'));
	const beforeDb = togetherDb(session);
	const together = askedLevels().at(-1)!;
	for (let count = 0; count < repeats; count++) take(session, together);
	typeIn(session, decide(session.profile, 'together'));
	const afterDb = togetherDb(session);
	// What the blend adds is held against this: subs matched, timed by distances alone.
	const distances = lossesOf(world, session.boxes);
	const promised: Promised[][] = [[], []];
	const blendReadings = way === 'none' ? 0 : blend(session, way, promised);
	const final = decide(session.profile, 'final');
	typeIn(session, final);
	return {
		session,
		found,
		final,
		losses: {distances, blended: lossesOf(world, session.boxes)},
		together: {beforeDb, afterDb},
		blendReadings,
		promisedAtSpot: promised[0]!,
		promisedBeside: promised[1]!,
	};
}

/** What a change between the subs did, before tones and after them. */
export type PairRound = {
	readonly isKept: boolean;
	readonly readings: number;
	/** Loss before minus after, dB: positive is better. */
	readonly alone: PairGains;
	readonly whole: PairGains;
};
export type PairGains = Losses & {readonly lfe: number};

/** A round with a change between the subs, typed in where it was kept, both read together anew, and tones after it. */
export function pairRoundIn(world: World): PairRound {
	const {session} = roundIn(world, 'none');
	const lossesNow = (): PairGains => ({
		...lossesOf(world, session.boxes),
		lfe: lossOf(world, session.boxes, 'LFE1', [subBand.fromHertz, subBand.toHertz]),
	});
	const start = lossesNow();
	const gains = (): PairGains => {
		const now = lossesNow();
		return {FC: start.FC - now.FC, fronts: start.fronts - now.fronts, lfe: start.lfe - now.lfe};
	};
	let readings = 0;
	while (readings < mostReadings) {
		const {asked} = askedForPair(session.profile);
		if (asked.length === 0) break;
		for (const one of asked) take(session, one);
		readings += asked.length;
	}

	const {isKept} = askedForPair(session.profile);
	if (isKept) {
		typeIn(session, decide(session.profile, 'pair'));
		const together = askedLevels().at(-1)!;
		for (let count = 0; count < repeats; count++) take(session, together);
		typeIn(session, decide(session.profile, 'pair together'));
	}

	const alone = gains();
	blend(session, 'tones', [[], []]);
	typeIn(session, decide(session.profile, 'pair and tones'));
	return {isKept, readings, alone, whole: gains()};
}

/** Readings as the blend asks for them, block by block, each perhaps changing the next. */
function blend(session: Session, way: Way, promised: Promised[][]): number {
	const {world, draws} = session;
	let count = 0;
	while (count < mostReadings) {
		const asked = askedForBlend(session.profile, way);
		if (asked.length === 0) break;
		if (promised[0]!.length === 0) {
			promised[0] = confirmed(session, world.places.seat);
			if (promised[0].length > 0)
				promised[1] = confirmed(session, besideSeat(world, 0.12, draws.branch('promised')));
		}

		for (const one of asked) take(session, one);
		count += asked.length;
	}

	return count;
}

/** What is promised of a setting to try, against one more reading of each tone. */
function confirmed({world, boxes, draws, profile}: Session, point: Point): Promised[] {
	const own = draws.branch(`promised at ${point.join()}`);
	return promisedLevels(profile).map(({asked, valueDb, sigmaDb}) => ({
		errorDb: readMeter(world, boxes, asked.playing, asked.signal, own, point) - valueDb,
		sigmaDb,
	}));
}
