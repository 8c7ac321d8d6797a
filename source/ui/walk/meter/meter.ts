import {type RecordedReading, recordedReadings} from '../../../profile/ask/recordedReadings.ts';
import {referenceSeat} from '../../../profile/ask/seats.ts';
import {nameOf} from '../../../profile/names.ts';
import {usualMainsBand, usualSubBand} from '../../../profile/practice.ts';
import type {Profile, Signal} from '../../../profile/types.ts';
import {formatNumber} from '../../../profile/units/decimalText.ts';
import {walkAnswer, withAnswer} from '../answered.ts';
import {walkingOrder} from '../order.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt} from '../prompt/single.ts';
import type {Stop} from '../stop.ts';
import {anchorPrompts} from './anchor.ts';
import {briefNoise, foundPrompts, noiseCaution} from './found.ts';
import {meterPrompt, weightingOf} from './meterPrompt.ts';
import {pointPrompts} from './points.ts';
import {soundPrompt} from './sound.ts';

const mainsNoise: Signal = usualMainsBand;
const bassNoise: Signal = usualSubBand;

const held: readonly string[] = [
	'      ┬   meter on a stand or at arm’s length,',
	'      │   tip at ear height, pointing up,',
	'     [ ]  head out of the way, slow',
];

/**
Meter questions: what stands in the receiver, then each speaker and each sub at the reference seat; subs together
where there are several; then, where wanted, the quiet room and the other seats.
*/
export function meterPrompts(profile: Profile): Prompt<Profile>[] {
	const reference = referenceSeat(profile);
	const subs = (profile.subs ?? []).map(({id}) => id);
	const weighting = weightingOf(profile);
	const mains = walkingOrder(profile);
	const sources = [...mains, ...subs];
	const recorded = recordedReadings(profile);
	const at = (
		source: string,
		seat: string,
		isRequired: boolean,
		further?: {point: number; place: string},
	) => {
		const isSub = subs.includes(source);
		const asked = meterPrompt(profile, {
			id: further ? `meter:${source}:${seat}:point${further.point}` : `meter:${source}:${seat}`,
			source,
			seat,
			...(further && {point: further.point}),
			signal: isSub ? bassNoise : mainsNoise,
			question: `${nameOf(profile, source)} ${further ? further.place : `at ${nameOf(profile, seat)}`}`,
			about: `Noise on ${nameOf(profile, source)} alone. Meter ${further ? `${further.place}, ` : ''}at ear height, ${weighting}, slow.`,
			explain: isSub
				? 'Let the needle settle for ten seconds and take its middle. Bass noise swings more than the rest.'
				: 'Wait until the figure settles and take its middle. Typed again, it is a repeat and both count.',
			drawing: held,
			caution: noiseCaution,
			briefCaution: briefNoise,
			isRequired,
			row: source,
		});
		const heard = further ? undefined : recorded.find(each => each.source === source && each.seat === seat);
		return heard && !asked.isAnswered ? byRecording(asked, heard) : asked;
	};

	const own = sources.map(source => at(source, reference.id, true));
	const isNeeded = own.some(({isAnswered}) => !isAnswered);
	return [
		soundPrompt(profile),
		...foundPrompts(profile),
		...anchorPrompts(profile, reference.id, mainsNoise, isNeeded),
		...own,
		...(subs.length > 1
			? [
					meterPrompt(profile, {
						id: `meter:subs:${reference.id}`,
						source: subs,
						seat: reference.id,
						signal: bassNoise,
						question: `All subs together at ${reference.name}`,
						about: `Noise on all subs at once. Meter at ear height, ${weighting}, slow.`,
						explain:
							'Two alike add up to anything up to 6 dB more than one, or to less than one. Without this reading a sum in step is assumed.',
						drawing: held,
						row: 'LFE1',
					}),
				]
			: []),
		meterPrompt(profile, {
			id: `meter:background:${reference.id}`,
			source: 'background',
			seat: reference.id,
			question: `The quiet room at ${reference.name}`,
			about: `Noise off, fans as in the round. Meter at ear height, ${weighting}, slow.`,
			explain:
				'The room’s own noise is subtracted from the readings. More than 15 dB below them it does not matter.',
			drawing: held,
		}),
		...pointPrompts(profile, reference, (point, place) =>
			mains.map(source => at(source, reference.id, false, {point, place})),
		),
		...seatLevelPrompts(profile, seat => sources.map(source => at(source, seat, false))),
	];
}

/** A question that a recording has answered: it may be read, and need not. */
function byRecording(asked: Prompt<Profile>, {decibels}: RecordedReading): Prompt<Profile> {
	return {
		...asked,
		about: `By the recording ${formatNumber(decibels, 1)} dB; it need not be read. ${asked.about ?? ''}`,
		isAnswered: true,
		isRequired: false,
	};
}

/** Levels at the other seats: an offer, and once it is taken up the questions. */
function seatLevelPrompts(
	profile: Profile,
	at: (seat: string) => readonly Prompt<Profile>[],
): Prompt<Profile>[] {
	const others = profile.seats.filter(seat => seat !== referenceSeat(profile));
	if (others.length === 0) return [];
	const id = 'meter:seats';
	const answer = walkAnswer(profile, id);
	const levels = others.flatMap(seat => at(seat.id));
	const isBegun = levels.some(({isAnswered}) => isAnswered);
	const offer = choicePrompt<Profile>({
		id,
		stop: 'meter',
		question: 'Levels at the other seats too?',
		about: `${levels.length} more readings. They let the trims be a mean over the seats.`,
		explain:
			'Delays are made for the reference seat alone. A few seats read show how far the others are off.',
		chosen: answer === 'no' ? 0 : answer === 'yes' || isBegun ? 1 : undefined,
		usual: 0,
		offers: [
			{label: 'Not now', put: subject => withAnswer(subject, id, 'no')},
			{label: 'Yes', put: subject => withAnswer(subject, id, 'yes')},
		],
	});
	return [{...offer, isOffered: true}, ...levels.map(level => ({...level, isOffered: answer === 'yes'}))];
}

/** Levels of the first round. */
export const meterStop = {
	id: 'meter',
	name: 'Meter',
	prompts: meterPrompts,
	after: 'dialIn',
} as const satisfies Stop<never>;
