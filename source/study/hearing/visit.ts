import {processorOf, subsByFeed, subsOf} from '../../profile/ask/subs.ts';
import type {Profile} from '../../profile/types.ts';

/** Subs that are told apart from the mains together: one output of a box. */
export type SubGroup = {
	readonly id: string;
	readonly subs: readonly string[];
	/** Where it is turned or muted, and how. */
	readonly box: 'processor' | 'receiver' | 'sub';
	readonly at: string;
	readonly change: 'turned' | 'muted';
};

/** One playing at a seat, and what to do before it. */
export type PlannedPlaying = {
	readonly seat: string;
	/** Group whose change is made before this playing, or undone where the seat goes backwards. */
	readonly touch?: SubGroup;
	readonly isBack: boolean;
};

/**
Groups of subs that can be told apart: the outputs of a processor, else the receiver's; at most two, for a third playing
costs more than it tells, and more than two are taken all together.
*/
export function subGroups(profile: Profile): SubGroup[] {
	const all = subsOf(profile);
	if (all.length === 0) return [];
	const groups = [...subsByFeed(profile)].flatMap(([feed, byOutput]) =>
		[...byOutput].map(([output, subs]): SubGroup => {
			const processor = output === '' ? undefined : processorOf(profile, {processorOutput: output});
			if (processor)
				return {
					id: subs.join('+'),
					subs,
					box: 'processor',
					at: output,
					change: processor.invertsOutputs === true ? 'turned' : 'muted',
				};
			return {
				id: subs.join('+'),
				subs,
				box: profile.receiver?.invertsSubs ? 'receiver' : 'sub',
				at: feed,
				change: profile.receiver?.invertsSubs ? 'turned' : 'muted',
			};
		}),
	);
	if (groups.length <= 2) return groups;
	const subs = all.map(({id}) => id);
	const first = groups[0]!;
	const canTurn = groups.every(({change}) => change === 'turned');
	return [{...first, id: subs.join('+'), subs, change: canTurn ? 'turned' : 'muted'}];
}

/** All subs as one, as a single playing tells them: they move together, at the receiver. */
export function allSubsGroup(profile: Profile): SubGroup | undefined {
	const all = subsOf(profile);
	if (all.length === 0) return undefined;
	const subs = all.map(({id}) => id);
	return {
		id: subs.join('+'),
		subs,
		box: 'receiver',
		at: [...new Set(all.map(({fedBy}) => fedBy))].join('+'),
		change: 'turned',
	};
}

/**
Playings of a whole recorded round: at each seat as it stands, then one change of the subs a playing; the next seat takes the
changes back one by one, so that nobody sets everything twice.

@param seats - In the order in which they are visited, the reference seat first.
*/
export function plannedPlayings(seats: readonly string[], groups: readonly SubGroup[]): PlannedPlaying[] {
	return seats.flatMap((seat, index): PlannedPlaying[] => {
		const isBack = index % 2 === 1;
		const order = isBack ? [...groups].reverse() : groups;
		return [{seat, isBack}, ...order.map(touch => ({seat, touch, isBack}))];
	});
}

/** Minutes that playings take: the file, and a minute to touch a box, press play and sit down again. */
export function minutesFor(playings: number, fileSeconds: number): number {
	return Math.ceil((playings * (fileSeconds + 60)) / 60);
}
