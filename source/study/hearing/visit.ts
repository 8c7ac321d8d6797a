import {processorOf, subsByFeed, subsOf} from '../../profile/ask/subs.ts';
import type {Profile} from '../../profile/types.ts';
import {type MovedDelay, thirdOfPeriod} from './thirdOfPeriod.ts';

/** Subs that are told apart from the mains together: one output of a box. */
export type SubGroup = {
	readonly id: string;
	readonly subs: readonly string[];
	/** Where it is turned or muted, and how. */
	readonly box: 'processor' | 'receiver' | 'sub';
	readonly at: string;
	readonly change: 'turned' | 'muted' | 'delayed';
	/** With `delayed`: by how much, and what to type in. */
	readonly moved?: MovedDelay;
};

/** One playing at a seat, and what to do before it. */
export type PlannedPlaying = {
	readonly seat: string;
	/** Group whose change is made before this playing, or undone where the seat goes backwards. */
	readonly touch?: SubGroup;
	readonly isBack: boolean;
};

/**
Groups of subs that can be told apart, by their polarity where a box turns it, else by muting an output of the processor, else by
a third of a period more in the receiver: the outputs of a processor, else the receiver's; at most two, for a third playing
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
			const line = {id: subs.join('+'), subs, at: feed};
			if (profile.receiver?.invertsSubs) return {...line, box: 'receiver', change: 'turned'};
			const moved = thirdOfPeriod(profile, feed);
			return moved
				? {...line, box: 'receiver', change: 'delayed', moved}
				: {...line, box: 'sub', change: 'muted'};
		}),
	);
	if (groups.length <= 2) return groups;
	const subs = all.map(({id}) => id);
	const first = groups[0]!;
	// One change for all: what every box of them can do, else muting.
	const isAlike = groups.every(({change, box}) => change === first.change && box === first.box);
	return [{...first, id: subs.join('+'), subs, ...(!isAlike && {change: 'muted' as const})}];
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
