import type {Profile} from '../../profile/types.ts';
import type {PlayingName} from '../../study/hearing/playingRow.ts';
import {subGroups} from '../../study/hearing/visit.ts';
import type {HearingState} from './state.ts';

/** A list with a word in it or, where it was, without it. */
export function withOrWithout(list: readonly string[], word: string | undefined): string[] {
	if (word === undefined) return [...list];
	return list.includes(word) ? list.filter(each => each !== word) : [...list, word];
}

/** The line under the cursor, as what is left out names it. */
export function roundLeftOut({report, cursor}: HearingState): string | undefined {
	const lines = report?.rounds.flatMap(({seat, base}) =>
		base.playing.lines.map(({channel}) => `${seat} ${channel}`),
	);
	return lines?.[cursor];
}

/** What the user says of playings once a key was pressed on the row of the cursor: another seat, another state, spare. */
export function namesAfter(
	profile: Profile,
	{names, report, cursor}: HearingState,
	what: 'seat' | 'changes' | 'spare',
): Readonly<Record<number, PlayingName>> {
	const row = report?.rows[cursor];
	if (!row) return names;
	const own = names[row.index] ?? {};
	const seats = profile.seats.map(({id}) => id);
	const next: PlayingName =
		what === 'spare'
			? {...own, isSpare: !own.isSpare}
			: what === 'seat'
				? {...own, seat: seats[(seats.indexOf(row.seat ?? '') + 1) % seats.length]!}
				: {...own, changes: ((own.changes ?? row.changed.length) + 1) % (subGroups(profile).length + 1)};
	return {...names, [row.index]: next};
}
