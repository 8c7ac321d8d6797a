import {referenceSeat} from '../../../profile/ask/seats.ts';
import {isOverhead} from '../../../profile/channels.ts';
import {nameOf} from '../../../profile/names.ts';
import type {Profile} from '../../../profile/types.ts';
import {lengthUnitOf, typedExamples} from '../lengthUnits.ts';
import {walkingOrder} from '../order.ts';
import type {Prompt} from '../prompt/prompt.ts';
import type {Stop} from '../stop.ts';
import {briefLadder, ladderCaution} from './ladder.ts';
import {linkPrompts} from './links.ts';
import {spotChecks} from './spotChecks.ts';
import {stakePrompts} from './stakeOut.ts';
import {tapePrompt} from './tapePrompt.ts';
import {wallPrompts} from './walls.ts';

const toEar: readonly string[] = [
	'   speaker                 seat',
	'   ┌───┐                    _',
	'   │ ○ ·- - - - - - - - -> ( )  ear',
	'   │ ◯ │    straight line  /|\\',
	'   └───┘',
];

/**
Tape questions: what is planned is put in its place; every speaker and sub to the reference seat, once round the room, so that the tape's end stays at
the seat; then what is late in a line, and where wanted the walls, the screen and the other seats.
*/
export function tapePrompts(profile: Profile): Prompt<Profile>[] {
	const reference = referenceSeat(profile);
	const sources = [...walkingOrder(profile), ...(profile.subs ?? []).map(({id}) => id)];
	const example = typedExamples[lengthUnitOf(profile)];
	const toSeat = (source: string, seat: string, isRequired: boolean): Prompt<Profile> => {
		const isSub = profile.subs?.some(({id}) => id === source) ?? false;
		return tapePrompt(profile, {
			id: `tape:${source}:${seat}`,
			stop: 'tape',
			from: source,
			to: seat,
			question: `${nameOf(profile, source)} to ${nameOf(profile, seat)}`,
			about: isSub
				? 'From the ear at the seat to the middle of the cone.'
				: 'From the ear at the seat straight to the tweeter.',
			explain: isSub
				? `A sub's distance sets when it may play. Type it as the tape shows it: ${example}`
				: `The straight line that the sound takes, at ear height. ${example}`,
			drawing: toEar,
			...(isOverhead(source) && {caution: ladderCaution, briefCaution: briefLadder}),
			isRequired,
			row: source,
		});
	};

	const others = profile.seats.filter(seat => seat !== reference);
	return [
		...stakePrompts(profile),
		...sources.map(source => toSeat(source, reference.id, true)),
		...spotChecks(profile, reference.id),
		...linkPrompts(profile),
		...wallPrompts(profile),
		tapePrompt(profile, {
			id: `tape:screen:${reference.id}`,
			stop: 'tape',
			from: 'screen',
			to: reference.id,
			question: `Centre of the screen to ${reference.name}`,
			about: 'From the ear at the seat to the middle of the picture.',
			explain: `Gives the viewing angle and the direction that counts as straight ahead. ${example}`,
		}),
		...others.flatMap(seat => sources.map(source => toSeat(source, seat.id, false))),
	];
}

/** Lengths: what delays are made of, then where everything stands. */
export const tapeStop = {
	id: 'tape',
	name: 'Tape',
	prompts: tapePrompts,
	after: 'meter',
} as const satisfies Stop<never>;
