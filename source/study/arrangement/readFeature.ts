import type {LengthUnit, Room} from '../../profile/types.ts';
import {readLength} from '../../profile/units/length.ts';

type Feature = NonNullable<Room['features']>[number];
type FeatureReading =
	| {readonly ok: true; readonly feature: Feature}
	| {readonly ok: false; readonly why: string};

const kinds: Readonly<Record<string, Feature['kind']>> = {
	door: 'door',
	opening: 'opening',
	window: 'window',
	radiator: 'radiator',
	furniture: 'furniture',
	walkway: 'walkway',
	not: 'notHere',
};
const wallNames = {left: 'wall:left', right: 'wall:right', front: 'wall:front', back: 'wall:back'} as const;
const wallForm = 'door left 0.5m 1.4m swing 0.9m';
const floorForm = 'walkway floor 0m 1m 2m 5m';

/**
Reads what stands in a room as it is typed: a kind, a wall (or `floor`), from where to where along it, and where wanted
`low`, `high` and `swing` with a length each; then words after a dash are kept as a note.

@param unit - Unit of bare numbers.
*/
export function readFeature(text: string, unit: LengthUnit): FeatureReading {
	const [typed = '', ...notes] = text.split(/\s[-–—]\s/);
	const [kindWord = '', where = '', ...rest] = typed.trim().toLowerCase().split(/\s+/);
	const note = notes.join(' - ').trim();
	const kind = Object.hasOwn(kinds, kindWord) ? kinds[kindWord]! : undefined;
	const no = (why: string): FeatureReading => ({
		ok: false,
		why: `${why} Such as: ${wallForm}, or ${floorForm}.`,
	});
	if (!kind) return no(`“${kindWord}” is none of ${Object.keys(kinds).join(', ')}.`);
	const sizes: Record<string, number> = {};
	const bare: number[] = [];
	let name: string | undefined;
	for (const word of rest) {
		if (word === 'low' || word === 'high' || word === 'swing') {
			name = word;
			continue;
		}

		const read = readLength(word, unit);
		if (read.kind !== 'ok') return no(`“${word}” is no length.`);
		if (name === undefined) bare.push(read.metres);
		else sizes[name] = read.metres;
		name = undefined;
	}

	const about = note === '' ? {} : {note};
	if (where === 'floor') {
		const [left, right, near, far] = bare;
		if (kind !== 'furniture' && kind !== 'walkway' && kind !== 'notHere')
			return no(`A ${kindWord} is on a wall.`);
		if (bare.length !== 4)
			return no(
				'On the floor four lengths tell it: left and right from the left wall, near and far from the screen wall.',
			);
		return {
			ok: true,
			feature: {
				on: 'floor',
				kind,
				leftMetres: left!,
				rightMetres: right!,
				nearMetres: near!,
				farMetres: far!,
				...about,
			},
		};
	}

	if (!Object.hasOwn(wallNames, where)) return no(`“${where}” is none of left, right, front, back, floor.`);
	if (kind === 'walkway') return no('A walkway is on the floor.');
	const [from, to] = bare;
	if (bare.length !== 2) return no('On a wall two lengths tell it: from where to where along it.');
	return {
		ok: true,
		feature: {
			on: wallNames[where as keyof typeof wallNames],
			kind,
			fromMetres: from!,
			toMetres: to!,
			...(sizes.low !== undefined && {lowMetres: sizes.low}),
			...(sizes.high !== undefined && {highMetres: sizes.high}),
			...(sizes.swing !== undefined && {swingMetres: sizes.swing}),
			...about,
		},
	};
}
