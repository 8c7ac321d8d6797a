import {isOverhead} from '../../../profile/channels.ts';
import {nameOf} from '../../../profile/names.ts';
import {isPlane, type Plane} from '../../../profile/planes.ts';
import type {Profile} from '../../../profile/types.ts';
import {type NextReading, nextReadings} from '../../../study/placement/guidedTape.ts';
import {derived} from '../../derived.ts';
import {walkAnswer, withAnswer} from '../answered.ts';
import {measuredOf} from '../measured.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt} from '../prompt/single.ts';
import {tapedNetworkOf} from '../sceneOf.ts';
import {briefLadder, ladderCaution} from './ladder.ts';
import {tapePrompt} from './tapePrompt.ts';

const offerId = 'tape:walls';
/** Readings looked ahead: enough to pass some of them. */
const lookAhead = 8;

type WallPair = Pick<NextReading, 'from' | 'to'>;

const nextWallsOf = derived({measured: measuredOf, network: tapedNetworkOf}, ({measured, network}) =>
	nextReadings(measured, lookAhead, network),
);

/** The offer of the round of walls, and once it is taken up what was read of it and what comes next. */
export function wallPrompts(profile: Profile): Prompt<Profile>[] {
	const answer = walkAnswer(profile, offerId);
	const taken = wallPairs(profile);
	const isBegun = answer === 'yes' || taken.some(({from}) => !isPlane(from));
	const offer = choicePrompt<Profile>({
		id: offerId,
		stop: 'tape',
		question: 'Tape to the walls too?',
		about: 'Seat, screen and each speaker to the walls: some 3 readings each.',
		explain:
			'Gives the floor plan, the angles, what to slide where, and names a mistyped length. No setting needs it.',
		chosen: answer === 'no' ? 0 : isBegun ? 1 : undefined,
		usual: 0,
		offers: [
			{label: 'Not now', put: subject => withAnswer(subject, offerId, 'no')},
			{label: 'Yes, the plan fills as you type', put: subject => withAnswer(subject, offerId, 'yes')},
		],
	});
	const offered = {...offer, isOffered: true, beside: 'plan' as const};
	if (answer !== 'yes') return [offered, ...taken.map(ends => wallPrompt(profile, ends))];
	const next = nextWallsOf(profile).filter(
		// Lengths between two things are questions of their own at this stop.
		ends => (isPlane(ends.from) || isPlane(ends.to)) && !taken.some(other => isSame(other, ends)),
	);
	return [offered, ...[...taken, ...next].map(ends => wallPrompt(profile, ends))];
}

/** Pairs with a wall, the floor or the ceiling in them that were read, each once; those of the room are asked at Room. */
function wallPairs({tape = []}: Profile): WallPair[] {
	const pairs: WallPair[] = [];
	for (const {from, to} of tape) {
		if (isPlane(from) === isPlane(to)) continue;
		if (!pairs.some(other => isSame(other, {from, to}))) pairs.push({from, to});
	}

	return pairs;
}

function isSame(a: WallPair, b: WallPair): boolean {
	return (a.from === b.from && a.to === b.to) || (a.from === b.to && a.to === b.from);
}

const planeNames: Readonly<Record<Plane, string>> = {
	'wall:left': 'the left wall',
	'wall:right': 'the right wall',
	'wall:front': 'the screen wall',
	'wall:back': 'the back wall',
	floor: 'the floor',
	ceiling: 'the ceiling',
};

const roomNames: Readonly<Record<string, string>> = {
	'wall:left wall:right': 'Width of the room',
	'wall:front wall:back': 'Length of the room',
	'floor ceiling': 'Height of the room',
};

function endName(profile: Profile, end: string): string {
	if (end === 'screen') return 'Centre of the screen';
	return isPlane(end) ? planeNames[end] : nameOf(profile, end);
}

function wallPrompt(profile: Profile, {from, to}: WallPair): Prompt<Profile> {
	const [thing, other] = isPlane(from) ? [to, from] : [from, to];
	const question = roomNames[`${from} ${to}`] ?? `${endName(profile, thing)} to ${endName(profile, other)}`;
	const prompt = tapePrompt(profile, {
		id: `tape:${from}:${to}`,
		stop: 'tape',
		from,
		to,
		question,
		about: isPlane(other)
			? `Square to ${planeNames[other]}, from ${touchText(profile, thing)}.`
			: `In a straight line, from ${touchText(profile, thing)}.`,
		explain:
			'Three readings place a thing, a fourth controls them. A pointer held square to the wall reads best.',
		...((isOverhead(thing) || other === 'ceiling') && {caution: ladderCaution, briefCaution: briefLadder}),
		row: thing,
	});
	return {...prompt, isOffered: walkAnswer(profile, offerId) === 'yes', beside: 'plan'};
}

function touchText({seats, subs = []}: Profile, thing: string): string {
	if (seats.some(({id: seat}) => seat === thing)) return 'the ear at the seat';
	if (subs.some(({id: sub}) => sub === thing)) return 'the middle of the cone';
	if (thing === 'screen') return 'the middle of the picture';
	return isPlane(thing) ? 'wall to wall' : 'the tweeter';
}
