import {listed, nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import type {Remark} from '../calibration/result.ts';
import type {Unusable} from './observations.ts';
import {readingRemarks} from './readingRemarks.ts';
import type {NetworkResult} from './result.ts';
import type {Settled} from './settle.ts';
import type {Snooped} from './snooping.ts';

function mirrorRemarks(result: Omit<NetworkResult, 'remarks'>, {mirrors}: Settled): Remark[] {
	return mirrors.flatMap(({point, decidedBy}): Remark[] => {
		const {id, label} = result.points[point]!;
		if (decidedBy === 'room') {
			return [
				{
					kind: 'note',
					code: 'tape-mirror-room',
					about: id,
					text: `${label}: two places fit the readings; one is outside the room, so the other holds.`,
				},
			];
		}

		if (decidedBy === 'side') {
			return [
				{
					kind: 'note',
					code: 'tape-mirror-side',
					about: id,
					text: `${label}: two places fit the readings; the one on the side where this channel belongs was taken.`,
				},
			];
		}

		if (decidedBy === 'nothing') {
			return [
				{
					kind: 'doubt',
					code: 'tape-mirror',
					about: id,
					text: `${label}: two places fit the readings and nothing decides. One more reading to a wall does.`,
				},
			];
		}

		return [];
	});
}

/** With more than this many, one sentence for all is read and one for each is not. */
const mostSentences = 3;

function undeterminedRemarks(
	profile: Profile,
	{points, undetermined, conventions}: Omit<NetworkResult, 'remarks'>,
): Remark[] {
	const labelOf = (id: string) => points.find(point => point.id === id)!.label;
	if (undetermined.length > mostSentences) {
		const names = listed(undetermined.map(({id}) => labelOf(id)));
		const text =
			conventions.length > 0
				? `The tape does not tell yet where these stand: ${names}. Begin with the seat to the left wall, the front wall and the floor.`
				: `The tape does not tell yet where these stand: ${names}. Each needs its height and its distances to two walls, or to the seat and one wall.`;
		return [{kind: 'advice', code: 'tape-undetermined', text}];
	}

	return undetermined.map(({id, status, missing}) => {
		const ends = listed(missing.map(({to}) => nameOf(profile, to)));
		const fix =
			missing.length === 0
				? 'Measure the reference seat and the room first.'
				: `${missing.length === 1 ? 'One more reading fixes it' : `${missing.length} more readings fix it`}: to ${ends}.`;
		const state = {
			weak: 'is known only roughly',
			undetermined: 'is not determined by its readings',
			unmeasured: 'has no reading yet',
		}[status];
		return {
			kind: status === 'weak' ? 'doubt' : 'advice',
			code: `tape-${status}`,
			about: id,
			text: `${labelOf(id)} ${state}. ${fix}`,
		};
	});
}

function apartRemarks(result: Omit<NetworkResult, 'remarks'>, {solved}: Settled): Remark[] {
	const parts = new Map<number, string[]>();
	for (const [index, part] of solved.components.entries()) {
		if (part < 0 || part === solved.home) continue;
		if (result.points[index]!.status !== 'undetermined') continue;
		parts.set(part, [...(parts.get(part) ?? []), result.points[index]!.label]);
	}

	return [...parts.values()]
		.filter(names => names.length > 1)
		.map(names => ({
			kind: 'doubt',
			code: 'tape-apart',
			text: `${listed(names)} are measured to each other, but nothing ties them to the rest. A distance from one of them to the seat, and one to a wall, does.`,
		}));
}

/** A chance of the global test below this makes the stated sigmas doubtful. */
const globalLimit = 0.001;

/** Everything that is to be said about a network, problems first. */
export function networkRemarks(
	profile: Profile,
	result: Omit<NetworkResult, 'remarks'>,
	unusable: readonly Unusable[],
	{fit: {settled}, isCutShort}: Snooped,
): Remark[] {
	if ((profile.tape ?? []).every(({setAside}) => setAside)) {
		return [
			{
				kind: 'advice',
				code: 'tape-none',
				text: 'No tape readings yet. Begin with the room’s width and length, then the seat.',
			},
		];
	}

	const used = result.readings.filter(({status}) => status === 'used');
	const planes = new Set(['wall:left', 'wall:right', 'wall:front', 'wall:back', 'floor', 'ceiling']);
	const onePlane = [...planes].find(
		plane => used.length > 2 && used.every(({from, to}) => from === plane || to === plane),
	);
	const repeats = result.globalTest && result.globalTest.probability < globalLimit;
	return [
		...readingRemarks(profile, result.suspects, unusable),
		...(isCutShort
			? [
					{
						kind: 'problem',
						code: 'tape-many',
						text: 'Still more readings contradict each other than could be sorted out. Check the unit, and that all were taken in this room.',
					} as const,
				]
			: []),
		...(repeats && !isCutShort
			? [
					{
						kind: 'doubt',
						code: 'tape-global',
						text: 'The readings as a whole disagree more than their uncertainty allows, though none stands out. Check where the tape is held at each speaker and at the seat.',
					} as const,
				]
			: []),
		...(onePlane
			? [
					{
						kind: 'doubt',
						code: 'tape-one-plane',
						text: `All readings are to the ${nameOf(profile, onePlane)}. They tell one coordinate of each thing and nothing of the other two.`,
					} as const,
				]
			: []),
		...apartRemarks(result, settled),
		...undeterminedRemarks(profile, result),
		...mirrorRemarks(result, settled),
		...(result.conventions.length > 0
			? [
					{
						kind: 'note',
						code: 'tape-free',
						text: `The walls do not hold the drawing: ${listed(result.conventions)}. Distances between things are not touched by that; left and right follow the channels’ names.`,
					} as const,
				]
			: []),
	];
}
