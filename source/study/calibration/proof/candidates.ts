import {
	type BoxState,
	channelState,
	outputState,
	withChannel,
	withOutput,
} from '../../../profile/ask/boxState.ts';
import {lineOf} from '../../../profile/ask/lines.ts';
import {nameOf} from '../../../profile/names.ts';
import type {Profile} from '../../../profile/types.ts';
import {inSignedDb} from '../words.ts';
import {blendCandidates} from './blendCandidates.ts';
import type {Predictor} from './predictor.ts';
import type {Mistake} from './proofResult.ts';
import {isSub} from './rounds.ts';

/** A mistake that may have been made, what would then stand in the boxes, and how often it happens. */
export type Candidate = {
	readonly mistake: Mistake;
	readonly change: (state: BoxState) => BoxState;
	/** Natural logarithm of the share of rounds in which it happens. Common practice, no source. */
	readonly logPrior: number;
};

const shareOf = {
	sign: 0.02,
	forgotten: 0.02,
	'other step': 0.01,
	swapped: 0.01,
	'all signs': 0.005,
	'all forgotten': 0.01,
};
/** A trim change below this cannot be seen with a meter, dB. */
const leastVisibleDb = 0.25;

type Control = {
	readonly id: string;
	readonly name: string;
	readonly box: 'receiver' | 'bass processor';
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
): Control[] {
	const lines = [...atoms].map(atom => lineOf(profile, atom));
	const channels = [...new Set(lines.map(({channel}) => channel))];
	const outputs = [...new Set(lines.flatMap(({output}) => output ?? []))];
	return [
		...channels.map(
			(id): Control => ({
				id,
				name: nameOf(profile, id),
				box: 'receiver',
				intendedDb: channelState(intended, id).trimDb,
				formerDb: channelState(former, id).trimDb,
				stepDb: profile.receiver?.trim.stepDb ?? 1,
				set: (state, trimDb) => withChannel(state, id, {trimDb}),
			}),
		),
		...outputs.map(
			(id): Control => ({
				id,
				name: `output ${id}`,
				box: 'bass processor',
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

function controlCandidates(control: Control): Candidate[] {
	const {id, name, box, intendedDb, formerDb, stepDb, set} = control;
	const one = (kind: 'sign' | 'forgotten' | 'other step', db: number, how: string): Candidate[] => {
		if (Math.abs(db - intendedDb) < leastVisibleDb) return [];
		const text = `${name}: ${how}, so ${inSignedDb(db)} stands there instead of ${inSignedDb(intendedDb)}.`;
		const check = `Look at the level of ${name} in the ${box}: it should read ${inSignedDb(intendedDb)}.`;
		return [
			{
				mistake: {kind, about: [id], text, check},
				change: state => set(state, db),
				logPrior: Math.log(shareOf[kind]),
			},
		];
	};

	return [
		...one('sign', -intendedDb, 'the sign was turned round'),
		// A former value of the opposite sign is the same as a turned sign: one entry is enough, both words are said.
		...one('forgotten', formerDb, 'the entry was forgotten'),
		...stepFactors(stepDb).flatMap(factor =>
			one('other step', intendedDb * factor, 'the steps were counted as decibels or the other way round'),
		),
	];
}

function swapCandidates(list: readonly Control[]): Candidate[] {
	return list.flatMap((first, index) =>
		list.slice(index + 1).flatMap((second): Candidate[] => {
			const isVisible =
				first.box === second.box && Math.abs(first.intendedDb - second.intendedDb) >= leastVisibleDb;
			if (!isVisible) return [];
			return [
				{
					mistake: {
						kind: 'swapped',
						about: [first.id, second.id],
						text: `${first.name} and ${second.name}: each has the other’s level.`,
						check: `Look at both in the ${first.box}: ${first.name} should read ${inSignedDb(first.intendedDb)}, ${second.name} ${inSignedDb(second.intendedDb)}.`,
					},
					change: state => second.set(first.set(state, second.intendedDb), first.intendedDb),
					logPrior: Math.log(shareOf.swapped),
				},
			];
		}),
	);
}

function allCandidates(list: readonly Control[]): Candidate[] {
	const receiver = list.filter(({box}) => box === 'receiver');
	const one = (
		kind: 'all signs' | 'all forgotten',
		text: string,
		dbOf: (control: Control) => number,
	): Candidate[] => {
		const wrong = receiver.filter(control => Math.abs(dbOf(control) - control.intendedDb) >= leastVisibleDb);
		if (wrong.length < 2) return [];
		return [
			{
				mistake: {
					kind,
					about: wrong.map(({id}) => id),
					text,
					check: `Look at the levels of ${wrong[0]!.name} and ${wrong[1]!.name} in the receiver: they should read ${inSignedDb(wrong[0]!.intendedDb)} and ${inSignedDb(wrong[1]!.intendedDb)}.`,
				},
				change: state => wrong.reduce((changed, control) => control.set(changed, dbOf(control)), state),
				logPrior: Math.log(shareOf[kind]),
			},
		];
	};

	return [
		...one(
			'all signs',
			'All levels were typed in with the sign turned round.',
			({intendedDb}) => -intendedDb,
		),
		...one(
			'all forgotten',
			'The receiver still holds the levels from before; the new ones were not stored.',
			({formerDb}) => formerDb,
		),
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
): Candidate[] {
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
