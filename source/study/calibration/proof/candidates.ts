import {
	type BoxState,
	channelState,
	outputState,
	withChannel,
	withOutput,
} from '../../../profile/ask/boxState.ts';
import {lineOf} from '../../../profile/ask/lines.ts';
import {finding} from '../../../profile/finding.ts';
import type {Profile} from '../../../profile/types.ts';
import {blendCandidates} from './blendCandidates.ts';
import type {SlipCandidate} from './candidate.ts';
import type {Predictor} from './forecast.ts';
import {isSub} from './rounds.ts';

const shareOf = {
	sign: 0.02,
	forgotten: 0.02,
	'other-step': 0.01,
	swapped: 0.01,
	'all-signs': 0.005,
	'all-forgotten': 0.01,
};
/** A trim change below this cannot be seen with a meter, dB. */
const leastVisibleDb = 0.25;

type LevelControl = {
	readonly id: string;
	readonly box: 'receiver' | 'processor';
	readonly intendedDb: number;
	readonly formerDb: number;
	readonly stepDb: number;
	readonly set: (state: BoxState, db: number) => BoxState;
};

/** Every level control that sounds in one of the readings. */
function controls(
	profile: Profile,
	intended: BoxState,
	former: BoxState,
	atoms: ReadonlySet<string>,
): LevelControl[] {
	const lines = [...atoms].map(atom => lineOf(profile, atom));
	const channels = [...new Set(lines.map(({channel}) => channel))];
	const outputs = [...new Set(lines.flatMap(({output}) => output ?? []))];
	return [
		...channels.map(
			(id): LevelControl => ({
				id,
				box: 'receiver',
				intendedDb: channelState(intended, id).trimDb,
				formerDb: channelState(former, id).trimDb,
				stepDb: profile.receiver?.trim.stepDb ?? 1,
				set: (state, trimDb) => withChannel(state, id, {trimDb}),
			}),
		),
		...outputs.map(
			(id): LevelControl => ({
				id,
				box: 'processor',
				intendedDb: outputState(intended, id).gainDb,
				formerDb: outputState(former, id).gainDb,
				stepDb: profile.bassProcessor?.gain.stepDb ?? 1,
				set: (state, gainDb) => withOutput(state, id, {gainDb}),
			}),
		),
	];
}

/** Steps of other boxes, or of another menu of this one, that a value may have been counted in, as factors. */
function stepFactors(stepDb: number): number[] {
	return stepDb === 1 ? [2, 0.5] : [1 / stepDb, stepDb];
}

function controlCandidates({id, box, intendedDb, formerDb, stepDb, set}: LevelControl): SlipCandidate[] {
	const one = (kind: 'sign' | 'forgotten' | 'other-step', db: number): SlipCandidate[] => {
		if (Math.abs(db - intendedDb) < leastVisibleDb) return [];
		const facts = {control: {box, id}, standsDb: db, shouldDb: intendedDb};
		return [
			{
				mistake: finding('doubt', `slip-${kind}`, [id], facts),
				change: state => set(state, db),
				logPrior: Math.log(shareOf[kind]),
			},
		];
	};

	return [
		...one('sign', -intendedDb),
		// A former value of the opposite sign is the same as a turned sign: one entry is enough, both words are said.
		...one('forgotten', formerDb),
		...stepFactors(stepDb).flatMap(factor => one('other-step', intendedDb * factor)),
	];
}

function swapCandidates(list: readonly LevelControl[]): SlipCandidate[] {
	return list.flatMap((first, index) =>
		list.slice(index + 1).flatMap((second): SlipCandidate[] => {
			const isVisible =
				first.box === second.box && Math.abs(first.intendedDb - second.intendedDb) >= leastVisibleDb;
			if (!isVisible) return [];
			return [
				{
					mistake: finding('doubt', 'slip-swapped', [first.id, second.id], {
						first: {box: first.box, id: first.id, shouldDb: first.intendedDb},
						second: {box: second.box, id: second.id, shouldDb: second.intendedDb},
					}),
					change: state => second.set(first.set(state, second.intendedDb), first.intendedDb),
					logPrior: Math.log(shareOf.swapped),
				},
			];
		}),
	);
}

function allCandidates(list: readonly LevelControl[]): SlipCandidate[] {
	const receiver = list.filter(({box}) => box === 'receiver');
	const one = (
		kind: 'all-signs' | 'all-forgotten',
		dbOf: (control: LevelControl) => number,
	): SlipCandidate[] => {
		const wrong = receiver.filter(control => Math.abs(dbOf(control) - control.intendedDb) >= leastVisibleDb);
		if (wrong.length < 2) return [];
		return [
			{
				mistake: finding(
					'doubt',
					`slip-${kind}`,
					wrong.map(({id}) => id),
					{examples: wrong.slice(0, 2).map(({id, intendedDb}) => ({id, shouldDb: intendedDb}))},
				),
				change: state => wrong.reduce((changed, control) => control.set(changed, dbOf(control)), state),
				logPrior: Math.log(shareOf[kind]),
			},
		];
	};

	return [
		...one('all-signs', ({intendedDb}) => -intendedDb),
		...one('all-forgotten', ({formerDb}) => formerDb),
	];
}

/**
Every single mistake that readings of these could show.

@param former - What stood in the boxes before the settings were typed in.
*/
export function candidates(
	profile: Profile,
	intended: BoxState,
	former: BoxState,
	used: readonly Predictor[],
): SlipCandidate[] {
	const atoms = new Set(used.flatMap(predictor => predictor.atoms));
	const list = controls(profile, intended, former, atoms);
	const areTogether = used.some(predictor => predictor.atoms.length > 1);
	const hasTones = used.some(({signal}) => signal.kind === 'tone');
	const subs = [...atoms].filter(atom => isSub(profile, atom));
	const mains = [...atoms].filter(atom => !isSub(profile, atom));
	return [
		...list.flatMap(controlCandidates),
		...swapCandidates(list),
		...allCandidates(list),
		...blendCandidates(profile, intended, former, {
			subs: areTogether ? subs : [],
			mains: hasTones ? mains : [],
			hasTones,
		}),
	];
}
