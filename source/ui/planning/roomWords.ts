import type {Profile, Room} from '../../profile/types.ts';
import {type LengthReading, readLength} from '../../profile/units/length.ts';
import {featureFaults} from '../../study/arrangement/keepOut.ts';
import {readFeature} from '../../study/arrangement/readFeature.ts';
import type {RoomShape} from '../../study/room/shape.ts';
import {readNotch} from './notch.ts';

/** What a line about the room made of the profile. */
export type RoomWordReading =
	| {readonly ok: true; readonly profile: Profile; readonly said: string}
	| {readonly ok: false; readonly why: string};

export const roomWordsHelp =
	'width 5m, length 6m, height 2.4m (or 2.7m/1.9m from left to right, front 2.7m/1.9m to the back, 1.2m/3.4m@2.1m/1.2m with places), notch back right 1.5m 2m (a corner that is missing), seat 3.9m, seats 3, subs 2, decay 0.4, picture 2.2m, door left 0.5m 1.4m swing 0.9m, window, radiator, opening, furniture floor 0m 1m 2m 3m, walkway floor …, drop 1';

const no = (why: string): RoomWordReading => ({ok: false, why});

/** Why a length was not taken as typed. */
function unread(text: string, read: Exclude<LengthReading, {kind: 'ok'}>): string {
	if (read.kind === 'no') return read.why;
	if (read.choices.length === 1) return `${read.choices[0]!.readAs}: no room is that size. Look at the unit.`;
	return `“${text}” can be read as ${read.choices.map(({readAs}) => readAs).join(' or as ')}. Type it with its unit.`;
}

/** Reads a ceiling: one height, or several from wall to wall, each perhaps with its place after `@`. */
export function readCeiling(
	text: string,
	unit: NonNullable<Profile['lengthUnit']>,
	end: {readonly across: number | undefined; readonly along: number | undefined},
): NonNullable<Room['ceiling']> | string {
	const isAlong = /^front\b/i.test(text.trim());
	const parts = text
		.trim()
		.replace(/^front\b/i, '')
		.split('/');
	const places: Array<{heightMetres: number; at?: number}> = [];
	for (const part of parts) {
		const [height = '', at] = part.split('@');
		const read = readLength(height.trim(), unit);
		const place = at === undefined ? undefined : readLength(at.trim(), unit);
		if (read.kind !== 'ok' || (place && place.kind !== 'ok'))
			return `“${part.trim()}” is no height. One such as 2.4m, or several from wall to wall: 2.7m/1.9m.`;
		places.push({heightMetres: read.metres, ...(place?.kind === 'ok' && {at: place.metres})});
	}

	if (places.length === 1) return {kind: 'flat', heightMetres: places[0]!.heightMetres};
	if (places.length > 8) return `${places.length} heights, at most eight.`;
	const between = isAlong ? ('wall:front-wall:back' as const) : ('wall:left-wall:right' as const);
	if (places.length === 2 && places.every(({at}) => at === undefined))
		return {kind: 'sloped', between, heightsMetres: [places[0]!.heightMetres, places[1]!.heightMetres]};
	const whole = isAlong ? end.along : end.across;
	if (whole === undefined)
		return 'Type width and length first: the heights between the walls have their places there.';
	return {
		kind: 'broken',
		between,
		places: places.map(({heightMetres, at}, i) => ({
			atMetres: at ?? (whole * i) / (places.length - 1),
			heightMetres,
		})),
	};
}

/** Reads one line about the room and what is in it. */
export function readRoomWords(text: string, profile: Profile, shape: RoomShape): RoomWordReading {
	const unit = profile.lengthUnit ?? 'm';
	const trimmed = text.trim();
	const [word = ''] = trimmed.toLowerCase().split(/\s+/);
	const rest = trimmed.slice(word.length).trim();
	const {room} = profile;
	const changed = (next: Profile): RoomWordReading => ({ok: true, profile: next, said: trimmed});
	const length = () => readLength(rest, unit);
	switch (word) {
		case 'width':
		case 'length': {
			const read = length();
			if (read.kind !== 'ok') return no(unread(rest, read));
			if (read.metres <= 0) return no(`“${rest}” is no ${word}.`);
			return changed({...profile, room: {...room, [`${word}Metres`]: read.metres}});
		}

		case 'height': {
			const ceiling = readCeiling(rest, unit, {across: shape.widthMetres, along: shape.lengthMetres});
			return typeof ceiling === 'string' ? no(ceiling) : changed({...profile, room: {...room, ceiling}});
		}

		case 'notch': {
			const notch = readNotch(rest, unit);
			if (typeof notch === 'string' && notch !== 'none') return no(notch);
			const {missingCorner: _, ...whole} = room;
			return changed({
				...profile,
				room: typeof notch === 'object' ? {...whole, missingCorner: notch} : whole,
			});
		}

		case 'decay': {
			const seconds = Number(rest.replace(',', '.').replace(/s$/, ''));
			if (!(seconds >= 0.05 && seconds <= 10)) return no(`“${rest}” is no decay in seconds, such as 0.4.`);
			return changed({...profile, room: {...room, decaySeconds: seconds}});
		}

		case 'picture': {
			const read = length();
			if (read.kind !== 'ok') return no(unread(rest, read));
			if (read.metres <= 0) return no(`“${rest}” is no width of a picture.`);
			return changed({...profile, screen: {...profile.screen, widthMetres: read.metres}});
		}

		case 'seat': {
			const read = length();
			if (read.kind !== 'ok') return no(unread(rest, read));
			const seats = profile.seats.map(({id}) => id);
			const places = (profile.planned?.places ?? []).filter(({id}) => !seats.includes(id));
			return changed({
				...withSeatAt({...profile, planned: {...profile.planned, places}}, shape, read.metres),
			});
		}

		case 'seats':
		case 'subs':
			return counted(profile, shape, word, Number(rest));
		case 'drop': {
			const features = room.features ?? [];
			const at = Number(rest) - 1;
			if (!features[at]) return no(`Type a number from 1 to ${features.length}: drop 1.`);
			return changed({...profile, room: {...room, features: features.filter((_, i) => i !== at)}});
		}

		default: {
			const read = readFeature(trimmed, unit);
			if (!read.ok) return read;
			const [fault] = featureFaults([read.feature], shape);
			if (fault)
				return no(
					fault.fault === 'beyondWall'
						? 'It reaches beyond its wall. Measure it from the wall that it is counted from.'
						: 'It ends before it begins. The smaller length comes first.',
				);
			return changed({...profile, room: {...room, features: [...(room.features ?? []), read.feature]}});
		}
	}
}

/** Plans the seats as a sofa in the middle of the width, at a distance from the screen wall. */
export function withSeatAt(profile: Profile, shape: RoomShape, metres: number): Profile {
	const places = profile.seats.map(({id}, i) => ({
		id,
		xMetres: shape.widthMetres / 2 + (i % 2 === 1 ? -Math.ceil(i / 2) : i / 2) * 0.65,
		yMetres: metres,
		zMetres: 1.1,
	}));
	const others = (profile.planned?.places ?? []).filter(({id}) => !places.some(place => place.id === id));
	return {...profile, planned: {...profile.planned, places: [...others, ...places]}};
}

/** Another number of seats or subs: those at the end come or go, while nothing was read of them. */
function counted(profile: Profile, shape: RoomShape, what: 'seats' | 'subs', count: number): RoomWordReading {
	const most = what === 'seats' ? 7 : 4;
	if (!Number.isInteger(count) || count < 1 || count > most)
		return no(`${what}: a number from 1 to ${most}.`);
	const list: ReadonlyArray<{readonly id: string}> = profile[what] ?? [];
	const going = list.slice(count).map(({id}) => id);
	const isRead = (profile.tape ?? []).some(({from, to}) => going.includes(from) || going.includes(to));
	if (isRead) return no('Of those at the end lengths were read already: they stay.');
	const said = `${count} ${what}`;
	const places = (profile.planned?.places ?? []).filter(({id}) => !going.includes(id));
	const planned = profile.planned && {...profile.planned, places};
	if (what === 'seats') {
		const seats = Array.from(
			{length: count},
			(_, i) => profile.seats[i] ?? {id: `seat${i + 1}`, name: `Seat ${i + 1}`},
		);
		const row = places.find(({id}) => id === seats[0]!.id)?.yMetres;
		const next = {...profile, seats, ...(planned && {planned})};
		return {ok: true, said, profile: row === undefined ? next : withSeatAt(next, shape, row)};
	}

	const subs = profile.subs ?? [];
	const fedBy = subs[0]?.fedBy;
	if (fedBy === undefined) return no('No channel feeds a sub: the layout has none.');
	return {
		ok: true,
		said,
		profile: {
			...profile,
			subs: Array.from(
				{length: count},
				(_, i) => subs[i] ?? {id: `sub${i + 1}`, name: `Subwoofer ${i + 1}`, fedBy},
			),
			...(planned && {planned}),
		},
	};
}
