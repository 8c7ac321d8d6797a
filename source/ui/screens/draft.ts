import {type LayoutName, layoutNames, readLayout} from '../../profile/generic/layouts.ts';
import {newProfile} from '../../profile/generic/newProfile.ts';
import {
	type GenericReceiver,
	genericReceiverNames,
	genericReceivers,
} from '../../profile/generic/receivers.ts';
import type {LengthUnit, Profile} from '../../profile/types.ts';
import {startNextRound} from '../walk/carry.ts';
import type {Prompt} from '../walk/prompt/prompt.ts';
import {choicePrompt, textPrompt} from '../walk/prompt/single.ts';
import type {Round} from '../walk/state.ts';
import {movedPrompt} from './movedPrompt.ts';
import {type PlanDraft, plannedProfile, planPrompts} from './planDraft.ts';

/** What is asked before a profile exists. */
export type Draft = {
	readonly date: string;
	readonly name?: string;
	/** The profile to start from; then only a name is asked. */
	readonly from?: Profile;
	/** Ids of what stands elsewhere now, or is new. */
	readonly moved?: readonly string[];
	readonly layout?: LayoutName;
	readonly subs?: number;
	readonly lengthUnit?: LengthUnit;
	readonly receiver?: GenericReceiver;
	/** The four answers of a room to be planned; then nothing else is asked. */
	readonly plan?: PlanDraft;
};

const units: ReadonlyArray<readonly [LengthUnit, string, string, also: readonly string[]]> = [
	['ft-in', 'Feet and inches', '9′ 4 1/2″', ['ft-in', 'in', 'inches']],
	['ft', 'Decimal feet', '9.38 ft', ['ft', 'feet']],
	['m', 'Metres', '2.86 m', ['m', 'metre']],
	['cm', 'Centimetres', '286 cm', ['cm']],
];

function draftPrompts(draft: Draft): Prompt<Draft>[] {
	if (draft.plan) return planPrompts(draft.plan).map(prompt => ofDraft(prompt));
	const name = textPrompt<Draft>({
		id: 'new:name',
		stop: 'new',
		question: 'A name for this arrangement',
		about: draft.from
			? `Starts from “${draft.from.name}”, ${draft.from.date}.`
			: 'For example: Den, sofa against the wall.',
		explain: 'It names the file and the page for the cabinet door. The date is kept beside it.',
		isRequired: true,
		usualText: draft.from ? nameOfYear(draft.from, draft.date) : 'Home cinema',
		shown: draft.name,
		put: (subject, text) => ({...subject, name: text}),
	});
	if (draft.from) return [name, movedPrompt(draft, draft.from)];
	return [name, layoutPrompt(draft), unitPrompt(draft), receiverPrompt(draft)];
}

/** The layout by its number in the list, or typed as it reads; then its middle figure is the number of subs. */
function layoutPrompt({layout, subs = 1}: Draft): Prompt<Draft> {
	const chosen = layout ? layoutNames.indexOf(layout) : -1;
	const prompt = choicePrompt<Draft>({
		id: 'new:layout',
		stop: 'new',
		question: 'Which speakers?',
		about: 'At ear height, subs, overhead. The middle figure is the number of subs: 5.2.4 has two.',
		explain: 'The layout names the channels. One surround pair is LS RS; with two they are sides and backs.',
		isRequired: true,
		chosen: chosen < 0 || subs > 1 ? undefined : chosen,
		...(layout && subs > 1 && {other: layout.replace('.1', `.${subs}`)}),
		offers: layoutNames.map(name => ({
			label: name,
			put: subject => ({...subject, layout: name, subs: undefined}),
		})),
	});
	return {
		...prompt,
		take(subject, text, taking) {
			const typed = readLayout(text);
			if (!typed) return prompt.take(subject, text, taking);
			return {kind: 'taken', next: {...subject, ...typed}, readAs: text.trim()};
		},
	};
}

function unitPrompt(draft: Draft): Prompt<Draft> {
	const chosen = units.findIndex(([unit]) => unit === draft.lengthUnit);
	return choicePrompt<Draft>({
		id: 'new:unit',
		stop: 'new',
		question: 'What does the tape show?',
		explain: 'Bare numbers are read in this unit. Any other may be typed with its sign; files hold metres.',
		isRequired: true,
		chosen: chosen < 0 ? undefined : chosen,
		offers: units.map(([lengthUnit, label, hint, also]) => ({
			label,
			hint,
			also,
			put: subject => ({...subject, lengthUnit}),
		})),
	});
}

function receiverPrompt(draft: Draft): Prompt<Draft> {
	const chosen = draft.receiver ? genericReceiverNames.indexOf(draft.receiver) : -1;
	return choicePrompt<Draft>({
		id: 'new:receiver',
		stop: 'new',
		question: 'How does the receiver take distances?',
		about: 'See its menu for distances or delays: what is the smallest change?',
		explain:
			'The nearest kind is enough. Its steps and limits can be corrected in Kit, which K opens at any stop.',
		isRequired: true,
		chosen: chosen < 0 ? undefined : chosen,
		offers: genericReceiverNames.map(receiver => ({
			label: genericReceivers[receiver].name,
			hint: `trims of ${genericReceivers[receiver].trim.stepDb} dB`,
			put: subject => ({...subject, receiver}),
		})),
	});
}

/** A question of the plan as one of the draft. */
function ofDraft(prompt: Prompt<PlanDraft>): Prompt<Draft> {
	const {setAside: _, ...rest} = prompt;
	return {
		...rest,
		take(subject, text, taking) {
			const taken = prompt.take(subject.plan ?? {}, text, taking);
			if (taken.kind === 'taken') return {...taken, next: {...subject, plan: taken.next}};
			if (taken.kind === 'no') return taken;
			return {
				...taken,
				choices: taken.choices.map(choice => ({...choice, next: {...subject, plan: choice.next}})),
			};
		},
	};
}

/** The older name with the year of the new day, as it would be renamed; with the day itself within the same year. */
function nameOfYear({name, date}: Profile, today: string): string {
	const [before, now] = [date.slice(0, 4), today.slice(0, 4)];
	if (before === now) return `${name}, ${today}`;
	return name.includes(before) ? name.replace(before, now) : `${name}, ${now}`;
}

/** The questions before a profile exists, as a round. */
export const draftRound: Round<Draft> = {
	prompts: draftPrompts,
	skipped: () => [],
	withSkipped: draft => draft,
	after: () => undefined,
	nameOf: () => 'the questions',
	isDrawer: () => false,
	rows: () => [],
	rowOf: () => undefined,
};

/** The profile that a draft stands for; undefined while something is missing. */
export function profileOf(draft: Draft): Profile | undefined {
	const {date, name, from, moved, layout, lengthUnit, receiver, subs, plan} = draft;
	if (plan) return plannedProfile(plan, date);
	if (!name) return undefined;
	if (from) return moved && startNextRound(from, {name, date, moved});
	const isWhole = draftPrompts(draft).every(({isAnswered}) => isAnswered);
	if (!isWhole || !layout) return undefined;
	return newProfile({name, date, layout, lengthUnit, receiver, ...(subs === undefined ? {} : {subs})});
}
