import {nameOf} from '../../../profile/names.ts';
import {isPlane} from '../../../profile/planes.ts';
import type {Profile} from '../../../profile/types.ts';
import {significance} from '../../../science/numeric/uncertain.ts';
import type {Change, TapeChange} from './profileDiff.ts';
import {tapeMeans} from './tapeMeans.ts';
import {changeScale} from './weights.ts';

const isSignificant = ({change, sigma}: TapeChange) => Math.abs(change) > significance * sigma;

/**
The end that moved when the distance between two things changed.

A changed distance to a wall shows who moved. Without one, a seat moved where most of its distances changed;
otherwise the speaker did, for one speaker is moved more often than a sofa alone against a single speaker.
*/
function moverOf(
	{from, to}: TapeChange,
	changed: readonly TapeChange[],
	all: readonly TapeChange[],
	seats: ReadonlySet<string>,
) {
	if (isPlane(from) && isPlane(to)) return 'room';
	if (isPlane(from) || isPlane(to)) return isPlane(from) ? to : from;
	const touches = (end: string) => (reading: TapeChange) => reading.from === end || reading.to === end;
	const leftItsWalls = (end: string) =>
		changed.some(reading => touches(end)(reading) && (isPlane(reading.from) || isPlane(reading.to)));
	if (leftItsWalls(from) !== leftItsWalls(to)) return leftItsWalls(from) ? from : to;
	const seat = [from, to].find(end => seats.has(end));
	if (!seat) return from;
	const speaker = seat === from ? to : from;
	const share = changed.filter(touches(seat)).length / all.filter(touches(seat)).length;
	return all.filter(touches(seat)).length >= 3 && share > 0.5 && !leftItsWalls(speaker) ? seat : speaker;
}

/** What moved, and what was only read again, from the tape distances that both profiles hold. */
export function tapeChanges(older: Profile, newer: Profile, rename: (end: string) => string): Change[] {
	const before = tapeMeans(older, rename);
	const after = tapeMeans(newer);
	const all: TapeChange[] = [];
	for (const [key, newMean] of after) {
		const oldMean = before.get(key);
		if (!oldMean) continue;
		const {from, to} = newMean;
		all.push({
			from,
			to,
			fromName: nameOf(newer, from),
			toName: nameOf(newer, to),
			before: {value: oldMean.value, sigma: oldMean.sigma},
			after: {value: newMean.value, sigma: newMean.sigma},
			change: newMean.value - oldMean.value,
			sigma: Math.hypot(oldMean.sigma, newMean.sigma),
		});
	}

	const changed = all.filter(isSignificant);
	const seats = new Set(newer.seats.map(({id}) => id));
	const byMover = new Map<string, TapeChange[]>();
	for (const reading of changed) {
		const mover = moverOf(reading, changed, all, seats);
		byMover.set(mover, [...(byMover.get(mover) ?? []), reading]);
	}

	const moved = [...byMover].map(([about, readings]): Change => {
		const sorted = readings.sort((a, b) => Math.abs(b.change) - Math.abs(a.change));
		return {
			kind: 'moved',
			about,
			name: about === 'room' ? 'The room' : nameOf(newer, about),
			readings: sorted,
			weight: Math.abs(sorted[0]!.change) / changeScale.metres,
		};
	});
	const again = all
		.filter(reading => !isSignificant(reading) && reading.change !== 0)
		.map(
			(reading): Change => ({
				kind: 'tape read again',
				about: reading.from,
				reading,
				weight: Math.abs(reading.change) / changeScale.metres,
			}),
		);
	const missing = (side: 'older' | 'newer', one: typeof before, other: typeof before): Change[] => {
		const count = [...one.keys()].filter(key => !other.has(key)).length;
		return count > 0 ? [{kind: 'only in one', about: 'tape', side, readings: 'tape', count, weight: 0}] : [];
	};

	return [...moved, ...again, ...missing('older', before, after), ...missing('newer', after, before)];
}
