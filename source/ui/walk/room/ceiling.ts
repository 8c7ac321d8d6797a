import {ceilingEnds} from '../../../profile/ask/ceiling.ts';
import type {Profile, Room} from '../../../profile/types.ts';
import {formatLength, type LengthChoice, readLength} from '../../../profile/units/length.ts';
import {walkAnswer, withAnswer} from '../answered.ts';
import {lengthUnitOf, unitWords} from '../lengthUnits.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {choicePrompt, valuePrompt} from '../prompt/single.ts';

type Ceiling = NonNullable<Room['ceiling']>;
type Shape = 'flat' | 'wall:left-wall:right' | 'wall:front-wall:back';

const section: readonly string[] = [
	'        ___---┐',
	'  ┌---        │ height at',
	'  │ height at │ the other wall',
	'  │ one wall  │',
	'  └───────────┘',
];

const slopes = {
	'wall:left-wall:right': {from: 'left wall', to: 'right wall'},
	'wall:front-wall:back': {from: 'screen wall', to: 'back wall'},
} as const;

/** The ceiling: one height, whether it slopes, and then the height at the other wall. */
export function ceilingPrompts(profile: Profile): Prompt<Profile>[] {
	const {ceiling} = profile.room;
	const heights = heightsOf(ceiling);
	const slope = ceiling?.kind === 'sloped' ? slopes[ceiling.between] : undefined;
	const prompts = [
		heightPrompt(profile, {
			id: 'room:height',
			question: slope ? `Height of the room at the ${slope.from}` : 'Height of the room',
			about: slope ? undefined : 'Floor to ceiling. The next question asks whether it slopes.',
			metres: heights?.[0],
			put: (subject, metres) =>
				withHeights(subject, [metres, heightsOf(subject.room.ceiling)?.[1] ?? metres]),
		}),
	];
	if (heights) prompts.push(shapePrompt(profile, ceiling!));
	if (heights && slope) {
		prompts.push(
			heightPrompt(profile, {
				id: 'room:otherHeight',
				question: `Height of the room at the ${slope.to}`,
				about: `The first height stands for the ${slope.from}.`,
				// Equal heights are what the slope starts with before this one is measured.
				metres: heights[0] === heights[1] ? undefined : heights[1],
				put: (subject, metres) => withHeights(subject, [heightsOf(subject.room.ceiling)![0], metres]),
			}),
		);
	}

	return prompts;
}

function heightPrompt(
	profile: Profile,
	asked: {
		readonly id: string;
		readonly question: string;
		readonly about?: string;
		readonly metres: number | undefined;
		readonly put: (subject: Profile, metres: number) => Profile;
	},
): Prompt<Profile> {
	const unit = lengthUnitOf(profile);
	const {metres, put, ...rest} = asked;
	return valuePrompt<Profile, LengthChoice>({
		...rest,
		stop: 'room',
		explain:
			'Floor to ceiling, at the wall where it slopes. Needed for overhead speakers and for the room in the bass.',
		drawing: section,
		unit: unitWords[unit],
		shown: metres === undefined ? undefined : formatLength(metres, unit),
		read(text) {
			const reading = readLength(text, unit, {limitMetres: 10});
			if (reading.kind === 'ok' && reading.metres <= 0) return {kind: 'no', why: 'A room has some height.'};
			return reading;
		},
		put: (subject, value) => put(subject, value.metres),
	});
}

function shapePrompt(profile: Profile, ceiling: Ceiling): Prompt<Profile> {
	const shapes: ReadonlyArray<readonly [Shape, string]> = [
		['flat', 'Flat, the same everywhere'],
		['wall:left-wall:right', 'Sloped, left wall to right wall'],
		['wall:front-wall:back', 'Sloped, screen wall to back wall'],
	];
	const now: Shape = ceiling.kind === 'flat' ? 'flat' : ceiling.between;
	return choicePrompt<Profile>({
		id: 'room:slope',
		stop: 'room',
		question: 'Shape of the ceiling',
		explain: 'A sloped ceiling is taken as a plane between its heights at two opposite walls.',
		drawing: section,
		// A height alone is kept as that of a flat ceiling, which is no answer yet.
		chosen:
			now === 'flat' && walkAnswer(profile, 'room:slope') === undefined
				? undefined
				: shapes.findIndex(([shape]) => shape === now),
		usual: 0,
		offers: shapes.map(([shape, label]) => ({
			label,
			put: subject => withAnswer(withShape(subject, shape), 'room:slope', shape),
		})),
	});
}

function heightsOf(ceiling: Ceiling | undefined): readonly [number, number] | undefined {
	return ceiling && ceilingEnds(ceiling);
}

function withHeights(profile: Profile, heights: readonly [number, number]): Profile {
	const before = profile.room.ceiling;
	const ceiling: Ceiling =
		before?.kind === 'sloped'
			? {...before, heightsMetres: [...heights]}
			: {...before, kind: 'flat', heightMetres: heights[0]};
	return {...profile, room: {...profile.room, ceiling}};
}

function withShape(profile: Profile, shape: Shape): Profile {
	const heights = heightsOf(profile.room.ceiling) ?? [2.4, 2.4];
	const ceiling: Ceiling =
		shape === 'flat'
			? {kind: 'flat', heightMetres: heights[0]}
			: {kind: 'sloped', between: shape, heightsMetres: [...heights]};
	return {...profile, room: {...profile.room, ceiling}};
}
