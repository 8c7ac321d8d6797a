import type {AnyFinding, FindingOf} from '../../profile/finding.ts';
import {subjectText} from '../../profile/names.ts';
import type {ArrangementFacts} from '../../study/arrangement/facts.ts';
import type {BlendFacts} from '../../study/calibration/blend/facts.ts';
import type {CrossoverFacts} from '../../study/calibration/crossover/facts.ts';
import type {GeneralFacts} from '../../study/calibration/facts.ts';
import type {HeadroomFacts} from '../../study/calibration/headroom/facts.ts';
import type {LevelFacts} from '../../study/calibration/levels/facts.ts';
import type {ProofFacts} from '../../study/calibration/proof/facts.ts';
import type {MissingFacts, TypedFacts} from '../../study/calibration/readings/facts.ts';
import type {TimingFacts} from '../../study/calibration/timing/facts.ts';
import type {DiffFacts} from '../../study/comparison/diff/facts.ts';
import type {HearingFacts} from '../../study/hearing/facts.ts';
import type {PlacementFacts} from '../../study/placement/facts.ts';
import type {RoomFacts} from '../../study/room/facts.ts';
import type {SurveyFacts} from '../../study/survey/facts.ts';
import type {WiringFacts} from '../../study/wiring/facts.ts';
import {arrangementSentences} from './arrangement.ts';
import {blendedSentences} from './blended.ts';
import {crossoverSentences} from './crossover.ts';
import {diffSentences} from './diff.ts';
import {generalSentences} from './general.ts';
import {headroomSentences} from './headroom.ts';
import {hearingSentences} from './hearing.ts';
import {levelSentences} from './levels.ts';
import {missingSentences} from './missing.ts';
import {placementSentences} from './placement.ts';
import {proofSentences} from './proof.ts';
import {roomSentences} from './room.ts';
import type {Say} from './say.ts';
import {asSentence, ended, type Sentences, type Words} from './sentences.ts';
import {surveySentences} from './survey.ts';
import {timingSentences} from './timing.ts';
import {typedSentences} from './typed.ts';
import {wiringSentences} from './wiring.ts';

/** Every code there is, with its facts. An interface, so that one code cannot mean two things. */
export interface AllFacts
	extends HearingFacts,
		ArrangementFacts,
		BlendFacts,
		CrossoverFacts,
		DiffFacts,
		HeadroomFacts,
		TimingFacts,
		MissingFacts,
		LevelFacts,
		GeneralFacts,
		PlacementFacts,
		ProofFacts,
		RoomFacts,
		SurveyFacts,
		TypedFacts,
		WiringFacts {}

/** What can be said: a finding of any topic. */
export type Sayable = FindingOf<AllFacts>;

const sentences: Sentences<AllFacts> = {
	...hearingSentences,
	...arrangementSentences,
	...blendedSentences,
	...crossoverSentences,
	...diffSentences,
	...headroomSentences,
	...timingSentences,
	...typedSentences,
	...missingSentences,
	...levelSentences,
	...generalSentences,
	...placementSentences,
	...proofSentences,
	...roomSentences,
	...surveySentences,
	...wiringSentences,
};

function wordsOf({code, facts}: AnyFinding, say: Say): Words {
	// The types of `Sayable` and `sentences` guard that each code meets its own facts.
	return (sentences as Readonly<Record<string, (facts: object, say: Say) => Words>>)[code]!(facts, say);
}

/** The plain names of what a finding is about, and what is said of it: `subject: said.`, or `said.` without a subject. */
export function saidParts(sayable: Sayable, say: Say): {readonly subject?: string; readonly said: string} {
	const [head, ...more] = wordsOf(sayable, say);
	const {about} = sayable as AnyFinding;
	if (about.length === 0) return {said: [asSentence(head), ...more].join(' ')};
	return {subject: subjectText(about.map(id => say.name(id))), said: [ended(head), ...more].join(' ')};
}

/** The whole sentence, name and all: for a page, `check` and `--json`. */
export function sentenceOf(sayable: Sayable, say: Say): string {
	const {subject, said} = saidParts(sayable, say);
	return subject === undefined ? said : `${subject}: ${said}`;
}

/** All that is said, without the name: for a place that has said the name already. Begins small. */
export function saidOf(sayable: Sayable, say: Say): string {
	const [head, ...more] = wordsOf(sayable, say);
	return [ended(head), ...more].join(' ');
}

/** What a row of a table says, which shows the name anyway. */
export function headOf(sayable: Sayable, say: Say): string {
	return wordsOf(sayable, say)[0];
}

/** Findings without those that say the same of the same thing again. */
export function distinct<Each extends Sayable>(sayables: readonly Each[]): Each[] {
	const keyOf = (each: Sayable) => {
		const {kind: _, ...rest} = each as AnyFinding;
		return JSON.stringify(rest);
	};
	return [...new Map(sayables.map(each => [keyOf(each), each])).values()];
}
