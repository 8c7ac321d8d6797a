import {isSameRoom} from '../../profile/ask/room.ts';
import {keepPlace} from './save.ts';
import type {CompareScreen, WalkScreen, World} from './screen.ts';

/**
Files to compare a profile with: those of the same room first, then older ones, the user's own before those that come with the program, the newest
first; then the others of the same day.
*/
function olderFiles({file, state}: WalkScreen, {files}: World): string[] {
	const {date, name} = state.subject;
	const isOfRoom = (other: string) => {
		const loaded = files.load(other);
		return loaded.ok && isSameRoom(loaded.profile, state.subject);
	};
	const isCandidate = (other: {readonly date: string; readonly name: string}) =>
		other.date < date || (other.date === date && other.name !== name);
	return files
		.list()
		.filter(other => other.file !== file && other.problem === undefined && isCandidate(other))
		.toSorted(
			(a, b) =>
				Number(isOfRoom(b.file)) - Number(isOfRoom(a.file)) ||
				Number(a.date === date) - Number(b.date === date) ||
				Number(a.isShipped) - Number(b.isShipped) ||
				b.date.localeCompare(a.date),
		)
		.map(other => other.file);
}

/** The comparison of a walk's profile with an older one, from where it leads back; undefined where there is none. */
export function compareWithOlder(walk: WalkScreen, world: World): CompareScreen | undefined {
	const back = keepPlace(walk, world);
	const choices = olderFiles(back, world);
	return nextOlder(
		{kind: 'compare', older: back.state.subject, newer: back.state.subject, from: 0, back, choices},
		world,
	);
}

/** The same comparison with the next older profile that can be read, the first again after the last. */
export function nextOlder(screen: CompareScreen, {files}: World): CompareScreen | undefined {
	const {choices = [], chosen} = screen;
	const at = choices.indexOf(chosen ?? '');
	const turned = [...choices.slice(at + 1), ...choices.slice(0, at + 1)];
	for (const file of turned) {
		const loaded = files.load(file);
		if (loaded.ok) return {...screen, older: loaded.profile, chosen: file, from: 0};
	}

	return undefined;
}
