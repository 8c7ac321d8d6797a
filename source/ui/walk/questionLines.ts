import {wrap} from '../../report/wrap.ts';
import type {ScreenLine} from '../parts/lines.tsx';
import type {PageKeys} from './page.ts';
import type {Prompt} from './prompt/prompt.ts';
import type {Note, RoundState} from './state.ts';

const signs: Readonly<Record<Note['kind'], readonly [sign: string, style: ScreenLine['style']]>> = {
	said: ['✓ ', 'good'],
	doubt: ['? ', 'doubt'],
	no: ['! ', 'trouble'],
	note: ['· ', undefined],
};

const margin = '  ';

export type QuestionView = {
	readonly columns: number;
	/** The value in figures three lines tall; undefined draws it on one line. */
	readonly draw?: (text: string) => readonly string[] | undefined;
	/** More words on the latest answer, from the settings computed with it. */
	readonly advice?: string;
	/** Only question, value and answer, for very small terminals. */
	readonly isBrief?: boolean;
	/** Every key that does something here, told with the help. */
	readonly keys?: PageKeys;
	/** What a name that is being typed may mean. */
	readonly targets?: readonly JumpTarget[] | undefined;
	/** How many more there are than those listed. */
	readonly moreTargets?: number | undefined;
};

/** The question, what was typed, what became of it: line by line, the most needed first. */
export function questionLines<Subject>(
	prompt: Prompt<Subject>,
	state: RoundState<Subject>,
	{columns, draw, advice, isBrief = false, keys = [], targets = [], moreTargets = 0}: QuestionView,
): ScreenLine[] {
	const put: Put = (text, style, indent = margin) =>
		wrap(text, columns, indent).map(line => ({text: line, style}));
	if (state.jump) return jumpLines(state.jump, targets, moreTargets);
	const lines: ScreenLine[] = [...put(prompt.question, 'strong')];
	if (isBrief) {
		// The keys first: the window may cut what is below.
		if (state.isHelpShown) return [...put(keysText(keys)), ...put(prompt.explain, 'quiet')];
		lines.push(...valueLines(prompt, state, undefined), ...noteLines(state.notes, put));
		return [...lines, ...answerLines(prompt, state, put, columns)];
	}

	if (prompt.about) lines.push(...put(prompt.about, 'quiet'));
	lines.push({text: ''});
	const answers = answerLines(prompt, state, put, columns);
	lines.push(...answers);
	if (answers.length > 0 && !state.asked) lines.push({text: ''});
	if (prompt.kind !== 'page') lines.push(...valueLines(prompt, state, draw));
	lines.push(...noteLines(state.notes, put));

	if (advice && state.notes.every(({kind}) => kind === 'said'))
		lines.push(...put(advice, 'quiet', `${margin}  `));
	if (prompt.caution) lines.push(...put(prompt.caution, 'doubt', `${margin}▲ `));
	if (state.isHelpShown) {
		lines.push({text: ''}, ...put(prompt.explain));
		lines.push(...put(keysText(keys), 'quiet'));
		lines.push(...(prompt.drawing ?? []).map(text => ({text: margin + text, style: 'quiet' as const})));
	}

	return lines;
}

/** Keys and what they do, in words for a paragraph. */
export function keysText(keys: PageKeys): string {
	return keys.length === 0 ? '' : `Keys: ${keys.map(([key, does]) => `${key} ${does}`).join(', ')}.`;
}

/** A question that a typed name may mean. */
export type JumpTarget = {readonly question: string; readonly place: string};

function jumpLines(
	{text, at}: {readonly text: string; readonly at: number},
	targets: readonly JumpTarget[],
	more: number,
): ScreenLine[] {
	return [
		{text: `${margin}Jump to which speaker, seat or question?`, style: 'strong'},
		{text: `${margin}▸ ${text}▏`, style: 'value', after: '   a few letters of its name'},
		{text: ''},
		...(targets.length === 0 ? [{text: `${margin}Nothing is called that.`}] : []),
		...targets.map(
			({question, place}, index): ScreenLine => ({
				text: `${margin}${index === at ? '›' : ' '} ${question}`,
				style: index === at ? 'value' : undefined,
				after: `   ${place}`,
			}),
		),
		...(more > 0
			? [
					{
						text: `${margin}  ${more} more fit; another letter or the stop’s name tells them apart.`,
						style: 'quiet' as const,
					},
				]
			: []),
	];
}

type Put = (text: string, style?: ScreenLine['style'], indent?: string) => ScreenLine[];

function noteLines(notes: readonly Note[], put: Put): ScreenLine[] {
	return notes.flatMap(({kind, text}) => put(text, signs[kind][1], margin + signs[kind][0]));
}

/** What can be chosen: answers to a question back, or those of the question itself. */
function answerLines<Subject>(
	prompt: Prompt<Subject>,
	{asked}: RoundState<Subject>,
	put: Put,
	columns: number,
): ScreenLine[] {
	if (!asked) return prompt.choices ? choiceLines(prompt, columns) : [];
	return [
		...put(asked.question, 'doubt', `${margin}? `),
		...asked.choices.map(({label}, index) => ({text: `${margin}  ${index + 1}  ${label}`})),
	];
}

function choiceLines<Subject>(prompt: Prompt<Subject>, columns: number): ScreenLine[] {
	const choices = prompt.choices ?? [];
	const texts = choices.map(({label, hint}, index) => {
		const isChosen = prompt.values[0] === label;
		const isUsual = prompt.usual === index && !prompt.isAnswered;
		const words = [hint, isChosen ? 'chosen' : '', isUsual ? 'Enter' : ''].filter(Boolean).join(', ');
		return {text: `${String(index + 1).padStart(4)}  ${label}`, after: words ? `  ${words}` : undefined};
	});
	const hasHints = choices.some(({hint}) => hint);
	if (choices.length <= 6 || hasHints || columns < 60) return texts;
	const half = Math.ceil(texts.length / 2);
	const paired = texts.slice(0, half).map(({text, after}, index) => {
		const other = texts[index + half];
		const left = `${text}${after ?? ''}`;
		return {text: left.padEnd(Math.floor(columns / 2)) + (other ? `${other.text}${other.after ?? ''}` : '')};
	});
	return paired;
}

function valueLines<Subject>(
	prompt: Prompt<Subject>,
	state: RoundState<Subject>,
	draw: QuestionView['draw'],
): ScreenLine[] {
	const before = beforeText(prompt, state);
	const after = [prompt.unit && `  ${prompt.unit}`, before && `     ${before}`].filter(Boolean).join('');
	const small: ScreenLine = {text: `${margin}▸ ${state.typed}▏`, style: 'value', after};
	if (!draw || prompt.kind !== 'reading' || state.asked) return [small];
	// Three lines whether figures stand in them or not, so that nothing below moves while one types.
	const tall = draw(state.typed);
	if (!tall) return [{text: ''}, {text: ''}, small];
	return tall.map((text, index) => ({
		text: margin + text,
		style: 'value',
		after: index === tall.length - 1 ? after : undefined,
	}));
}

function beforeText<Subject>(prompt: Prompt<Subject>, state: RoundState<Subject>): string {
	if (prompt.usualText && !prompt.isAnswered) return `Enter: ${prompt.usualText}`;
	if (prompt.kind === 'choice' || prompt.values.length === 0) return '';
	if (state.correcting !== undefined) return `instead of ${prompt.values[state.correcting]}`;
	const shown = prompt.values.slice(-4);
	const more = prompt.values.length > shown.length ? `${prompt.values.length} readings, last ` : '';
	return `so far ${more}${shown.join('  ')}`;
}
