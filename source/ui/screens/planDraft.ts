import {newProfile} from '../../profile/generic/newProfile.ts';
import type {LengthUnit, Profile, Room} from '../../profile/types.ts';
import {formatLength, readLength} from '../../profile/units/length.ts';
import {roomBoundsMetres} from '../../study/room/shape.ts';
import {shapeOf} from '../../study/room/shapeOf.ts';
import {readCeiling, withSeatAt} from '../planning/roomWords.ts';
import type {Prompt, TakenAnswer} from '../walk/prompt/prompt.ts';
import {takenFrom} from '../walk/prompt/taken.ts';

/** The four answers that a first picture needs. */
export type PlanDraft = {
	readonly lengthUnit?: LengthUnit;
	readonly widthMetres?: number;
	readonly lengthMetres?: number;
	readonly ceiling?: NonNullable<Room['ceiling']>;
	readonly seatMetres?: number;
};

/** Seats that are assumed: a sofa. Common practice, no source. */
const usualSeats = 3;

/** The unit that somebody types in: feet where a sign of them is there, else metres. */
const typedUnit = (text: string): LengthUnit => (/['’′"″]|\d\s*(ft|in)\b/i.test(text) ? 'ft-in' : 'm');

type Bounds = {readonly least: number; readonly most: number; readonly beyond: string};

function lengthPrompt(
	draft: PlanDraft,
	asked: Pick<Prompt<PlanDraft>, 'id' | 'question' | 'about' | 'explain'> & {
		readonly key: 'widthMetres' | 'lengthMetres' | 'seatMetres';
		readonly bounds: (subject: PlanDraft) => Bounds;
	},
): Prompt<PlanDraft> {
	const {key, bounds, ...rest} = asked;
	const {lengthUnit = 'm'} = draft;
	const metres = draft[key];
	return {
		...rest,
		stop: 'new',
		kind: 'text',
		isRequired: true,
		values: metres === undefined ? [] : [formatLength(metres, lengthUnit)],
		isAnswered: metres !== undefined,
		take(subject, text): TakenAnswer<PlanDraft> {
			const unit = subject.lengthUnit ?? typedUnit(text);
			const read = readLength(text, unit);
			const {least, most, beyond} = bounds(subject);
			const meant = read.kind === 'ok' ? [read] : read.kind === 'ask' ? read.choices : [];
			if (meant.length > 0 && meant.every(({metres}) => metres < least || metres > most))
				return {kind: 'no', why: `${meant[0]!.readAs}: ${beyond}`};
			return takenFrom(read, value => ({...subject, lengthUnit: unit, [key]: value.metres}));
		},
	};
}

const {least, most, leastHeight, mostHeight} = roomBoundsMetres;
const noRoom = {least, most, beyond: `no room is that size. From ${least} to ${most} m; look at the unit.`};

/** The four questions before a first picture. */
export function planPrompts(draft: PlanDraft): Prompt<PlanDraft>[] {
	const {ceiling, lengthUnit = 'm'} = draft;
	const heights =
		ceiling === undefined
			? []
			: ceiling.kind === 'flat'
				? [ceiling.heightMetres]
				: ceiling.kind === 'sloped'
					? ceiling.heightsMetres
					: ceiling.places.map(({heightMetres}) => heightMetres);
	return [
		lengthPrompt(draft, {
			id: 'plan:width',
			key: 'widthMetres',
			question: 'How wide is the room?',
			about: 'From the left wall to the right, as seen from the seat facing the screen. 4.2m or 13\' 9".',
			explain: 'Four answers give the first picture; all else is assumed, told, and can be corrected.',
			bounds: () => noRoom,
		}),
		lengthPrompt(draft, {
			id: 'plan:length',
			key: 'lengthMetres',
			question: 'How long is it?',
			about: 'From the screen wall to the back.',
			explain: 'The other side of the floor. A corner that is missing is typed afterwards: r, notch.',
			bounds: () => noRoom,
		}),
		{
			id: 'plan:height',
			stop: 'new',
			kind: 'text',
			question: 'How high is it?',
			about:
				'2.4m; sloped 2.7m/1.9m from left to right; front 2.7m/1.9m to the back; 1.2m/3.4m@2.1m/1.2m with places.',
			explain: 'Heights from one wall to the other, up to eight; @ gives the place of one between.',
			isRequired: true,
			values:
				ceiling === undefined ? [] : [heights.map(metres => formatLength(metres, lengthUnit)).join(' / ')],
			isAnswered: ceiling !== undefined,
			take(subject, text) {
				const read = readCeiling(text, subject.lengthUnit ?? typedUnit(text), {
					across: subject.widthMetres,
					along: subject.lengthMetres,
				});
				if (typeof read === 'string') return {kind: 'no', why: read};
				const found =
					read.kind === 'flat'
						? [read.heightMetres]
						: read.kind === 'sloped'
							? [...read.heightsMetres]
							: read.places.map(({heightMetres}) => heightMetres);
				if (Math.max(...found) < leastHeight || Math.max(...found) > mostHeight)
					return {
						kind: 'no',
						why: `No room to sit in is that high. From ${leastHeight} to ${mostHeight} m; look at the unit.`,
					};
				return {kind: 'taken', next: {...subject, ceiling: read}, readAs: text.trim()};
			},
		},
		lengthPrompt(draft, {
			id: 'plan:seat',
			key: 'seatMetres',
			question: 'How far is the seat from the screen wall?',
			about: 'From the wall to the ear, roughly.',
			explain: 'Three seats side by side are assumed, one sub in a corner, speakers at their usual angles.',
			bounds: subject => ({
				least: 0.5,
				most: (subject.lengthMetres ?? most) - 0.2,
				beyond: 'that is not inside the room. From half a metre to just before the back wall.',
			}),
		}),
	];
}

/** The profile of a room to be planned; undefined while an answer is missing. */
export function plannedProfile(draft: PlanDraft, date: string): Profile | undefined {
	const {lengthUnit = 'm', widthMetres, lengthMetres, ceiling, seatMetres} = draft;
	if (widthMetres === undefined || lengthMetres === undefined || !ceiling || seatMetres === undefined)
		return undefined;
	const made = newProfile({
		name: 'Planned room',
		date,
		layout: '5.1',
		lengthUnit,
		receiver: lengthUnit === 'ft-in' ? 'fine-feet' : 'fine-metric',
		seats: usualSeats,
	});
	const profile: Profile = {...made, room: {...made.room, widthMetres, lengthMetres, ceiling}};
	const {shape} = shapeOf(profile.room, {});
	return shape ? withSeatAt(profile, shape, seatMetres) : profile;
}
