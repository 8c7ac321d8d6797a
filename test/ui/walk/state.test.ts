import {describe, expect, test} from 'vitest';
import type {WalkPlace} from '../../../source/ui/walk/places.ts';
import type {Prompt} from '../../../source/ui/walk/prompt/prompt.ts';
import {choicePrompt, textPrompt, valuePrompt} from '../../../source/ui/walk/prompt/single.ts';
import {
	currentPrompt,
	type Round,
	type RoundAction,
	type RoundState,
	reduceRound,
	startRound,
} from '../../../source/ui/walk/state.ts';

type Notes = {
	readonly values: Readonly<Record<string, readonly number[]>>;
	readonly name?: string;
	readonly kind?: number;
	readonly skipped: readonly string[];
};

/** A list of figures: every answer is a repeat, unless it corrects one. 13 is doubted, 99 refused, 50 asked about, 51 too, with a doubtful answer. */
function figures(notes: Notes, id: string, stop: WalkPlace, isRequired: boolean): Prompt<Notes> {
	const values = notes.values[id] ?? [];
	const put = (subject: Notes, value: number, correcting?: number): Notes => {
		const before = subject.values[id] ?? [];
		const after =
			correcting === undefined
				? [...before, value]
				: before.map((old, at) => (at === correcting ? value : old));
		return {...subject, values: {...subject.values, [id]: after}};
	};

	return {
		id,
		stop,
		question: `Figure ${id}`,
		kind: 'reading',
		isRequired,
		values: values.map(String),
		isAnswered: values.length > 0,
		explain: 'A figure.',
		take(subject, text, {correcting}) {
			const value = Number(text);
			if (value === 99) return {kind: 'no', why: 'Not 99.'};
			if (value === 50) {
				const choices = [5, 50].map(choice => ({
					label: String(choice),
					next: put(subject, choice, correcting),
				}));
				return {kind: 'ask', question: 'Five or fifty?', choices};
			}

			if (value === 51) {
				const next = put(subject, 13, correcting);
				return {kind: 'ask', question: 'Thirteen?', choices: [{label: '13', next, doubt: 'So few?'}]};
			}

			const doubt = value === 13 ? 'Thirteen?' : undefined;
			return {kind: 'taken', next: put(subject, value, correcting), readAs: text, doubt};
		},
	};
}

const round: Round<Notes> = {
	prompts: notes => [
		figures(notes, 'early', 'room', false),
		choicePrompt<Notes>({
			id: 'kind',
			stop: 'room',
			question: 'Which kind?',
			explain: 'A kind.',
			chosen: notes.kind,
			usual: 1,
			offers: [0, 1].map(kind => ({label: `kind ${kind}`, put: subject => ({...subject, kind})})),
		}),
		textPrompt<Notes>({
			id: 'name',
			stop: 'room',
			question: 'A name',
			explain: 'A name.',
			shown: notes.name,
			put: (subject, name) => ({...subject, name}),
		}),
		figures(notes, 'a', 'tape', true),
		figures(notes, 'b', 'tape', true),
		figures(notes, 'late', 'tape', false),
		{
			...valuePrompt<Notes, {readAs: string}>({
				id: 'page',
				stop: 'dialIn',
				question: 'A page',
				explain: 'A page.',
				shown: '',
				read: () => ({kind: 'no', why: ''}),
				put: subject => subject,
			}),
			kind: 'page',
		},
		figures(notes, 'drawer', 'kit', false),
	],
	skipped: ({skipped}) => skipped,
	withSkipped: (notes, skipped) => ({...notes, skipped}),
	after: (_, place) => ({room: 'a', tape: 'page'})[place as string],
	nameOf: place => place,
	isDrawer: place => place === 'kit',
	rows: notes => Object.keys(notes.values).map(id => ({id, name: id})),
	rowOf: (_, {id}) => id,
};

const empty: Notes = {values: {}, skipped: []};
const type = (text: string): RoundAction => ({kind: 'type', text});
const enter: RoundAction = {kind: 'take', takenAt: '2026-04-18T20:00:00Z'};

function run(
	state: RoundState<Notes>,
	...actions: readonly (RoundAction | RoundAction['kind'])[]
): RoundState<Notes> {
	return actions.reduce<RoundState<Notes>>(
		(now, action) =>
			reduceRound(round, now, typeof action === 'string' ? ({kind: action} as RoundAction) : action),
		state,
	);
}

const start = (promptId?: string, notes: Notes = empty) => startRound(round, notes, promptId);

describe('where a round starts', () => {
	test('at the first required question, with the optional ones before it left for later', () => {
		expect(start().promptId).toBe('a');
	});

	test('at the prompt that was kept, even an optional one', () => {
		expect(start('early').promptId).toBe('early');
	});

	test('at the page of results where all that is needed is answered', () => {
		expect(start(undefined, {values: {a: [1], b: [2]}, skipped: []}).promptId).toBe('page');
	});

	test('at the first open one where the kept prompt is gone', () => {
		expect(start('no-such-prompt').promptId).toBe('a');
	});
});

describe('taking', () => {
	test('Enter takes what was typed and moves to the next required question', () => {
		const state = run(start(), type('7'), enter);
		expect(state.subject.values).toEqual({a: [7]});
		expect(state).toMatchObject({promptId: 'b', typed: '', latest: 'a'});
		expect(state.notes).toEqual([{kind: 'said', text: 'Figure a: 7'}]);
	});

	test('the last required answer leads to the page of results, not to what was left for later', () => {
		expect(run(start(), type('7'), enter, type('8'), enter).promptId).toBe('page');
	});

	test('the same question answered again is a repeat', () => {
		const state = run(start(), type('7'), enter, 'again', type('8'), enter);
		expect(state.subject.values).toEqual({a: [7, 8]});
		expect(state.promptId).toBe('b');
	});

	test('Enter on nothing does not leave a required question', () => {
		const state = run(start(), enter);
		expect(state).toMatchObject({promptId: 'a', notes: [{kind: 'no'}]});
	});

	test('Enter on nothing puts an optional question off and goes on within its stop', () => {
		const state = run(start('early'), enter);
		expect(state.subject.skipped).toEqual(['early']);
		expect(state.promptId).toBe('kind');
	});

	test('an answer to a question that was put off takes it from the list', () => {
		const state = run(start('early', {...empty, skipped: ['early', 'late']}), type('7'), enter);
		expect(state.subject.skipped).toEqual(['late']);
	});

	test('Enter on nothing takes the usual choice', () => {
		expect(run(start('kind'), enter).subject.kind).toBe(1);
	});

	test('what an answer asks of the screen is asked by Enter alone, too', () => {
		const writing: Round<Notes> = {
			...round,
			prompts: notes =>
				round.prompts(notes).map(prompt =>
					prompt.id === 'kind'
						? {
								...prompt,
								take: (...given) => {
									const taken = prompt.take(...given);
									return taken.kind === 'taken' ? {...taken, wish: 'signals'} : taken;
								},
							}
						: prompt,
				),
		};
		const by = (...actions: RoundAction[]) =>
			actions.reduce((now, action) => reduceRound(writing, now, action), start('kind'));
		expect(by(enter).wish).toBe('signals');
		expect(by(type('1'), enter).wish).toBe('signals');
	});

	test('a choice out of the list is refused', () => {
		const state = run(start('kind'), type('3'), enter);
		expect(state.subject.kind).toBeUndefined();
		expect(state.notes[0]).toMatchObject({
			kind: 'no',
			text: '“3” is none of these. Type 1 or 2.',
		});
	});

	test('white space around the text does not count', () => {
		expect(run(start(), type('  7 '), enter).subject.values).toEqual({a: [7]});
		expect(run(start(), type('   '), enter).notes[0]).toMatchObject({kind: 'no'});
	});
});

describe('refusals, doubts and questions back', () => {
	test('what was refused stays to be looked at, and the next character starts anew', () => {
		const refused = run(start(), type('99'), enter);
		expect(refused).toMatchObject({typed: '99', notes: [{kind: 'no', text: 'Not 99.'}]});
		expect(run(refused, type('6')).typed).toBe('6');
		expect(run(refused, 'erase', type('8')).typed).toBe('98');
	});

	test('a doubt is asked once; Enter again takes the value all the same', () => {
		const doubted = run(start(), type('13'), enter);
		expect(doubted.subject).toBe(empty);
		expect(doubted.notes).toEqual([{kind: 'doubt', text: 'Thirteen? Enter again takes it all the same.'}]);
		expect(run(doubted, enter).subject.values).toEqual({a: [13]});
	});

	test('a doubt does not carry over to another value', () => {
		const state = run(start(), type('13'), enter, type('14'), enter, 'again', type('13'), enter);
		expect(state.subject.values).toEqual({a: [14]});
	});

	test('a question back is answered by its number', () => {
		const asked = run(start(), type('50'), enter);
		expect(asked.asked?.choices.map(({label}) => label)).toEqual(['5', '50']);
		expect(run(asked, type('2'), enter).subject.values).toEqual({a: [50]});
	});

	test('a doubtful answer to a question back is asked about once, then taken', () => {
		const doubted = run(start(), type('51'), enter, type('1'), enter);
		expect(doubted.subject).toBe(empty);
		expect(doubted.notes).toEqual([{kind: 'doubt', text: 'So few? Enter again takes it all the same.'}]);
		expect(run(doubted, enter).subject.values).toEqual({a: [13]});
	});

	test('a value typed anew answers a question back', () => {
		const asked = run(start(), type('50'), enter);
		expect(run(asked, type('7'), enter)).toMatchObject({asked: undefined, subject: {values: {a: [7]}}});
		expect(run(asked, type('51'), enter).asked?.question).toBe('Thirteen?');
	});

	test('Enter alone answers no question back that has several answers', () => {
		const state = run(start(), type('50'), enter, enter);
		expect(state.asked).toBeDefined();
		expect(state.subject.values).toEqual({});
	});

	test('Esc drops a question back and stays', () => {
		const state = run(start(), type('50'), enter, 'eraseAll');
		expect(state).toMatchObject({asked: undefined, promptId: 'a', typed: ''});
	});
});

describe('a second round of readings', () => {
	const complete = () => run(start(), type('1'), enter, type('2'), enter);

	test('goes on to the next question of its stop, not to what comes when all is there', () => {
		const state = run({...complete(), promptId: 'a'}, type('3'), enter);
		expect(state.subject.values).toEqual({a: [1, 3], b: [2]});
		expect(state.promptId).toBe('b');
	});

	test('but a correction leads on to what it changes', () => {
		const state = run({...complete(), promptId: 'a'}, 'correct', type('3'), enter);
		expect(state.subject.values).toEqual({a: [3], b: [2]});
		expect(state.promptId).not.toBe('b');
	});
});

describe('correcting', () => {
	const two = run(start(), type('7'), enter, 'again', type('8'), enter, 'again');

	test('the next value replaces the last one', () => {
		expect(run(two, 'correct', type('9'), enter).subject.values).toEqual({a: [7, 9]});
	});

	test('asked for again, the one before is meant', () => {
		expect(run(two, 'correct', 'correct', type('9'), enter).subject.values).toEqual({a: [9, 8]});
		expect(run(two, 'correct', 'correct', 'correct', type('9'), enter).subject.values).toEqual({a: [7, 9]});
	});

	test('Enter alone leaves the value', () => {
		const state = run(two, 'correct', enter);
		expect(state.subject).toBe(two.subject);
		expect(state).toMatchObject({promptId: 'a', correcting: undefined});
	});

	test('without a value there is nothing to correct', () => {
		expect(run(start(), 'correct').correcting).toBeUndefined();
	});

	test('moving on forgets that a value was to be corrected', () => {
		expect(run(two, 'correct', 'next', 'previous', type('9'), enter).subject.values).toEqual({a: [7, 8, 9]});
	});
});

describe('undo', () => {
	test('takes back the last answer and returns to its question', () => {
		const state = run(start(), type('7'), enter, 'undo');
		expect(state.subject).toBe(empty);
		expect(state.promptId).toBe('a');
	});

	test('clears what is being typed first', () => {
		const state = run(start(), type('7'), enter, type('8'), 'undo');
		expect(state).toMatchObject({typed: '', promptId: 'b'});
		expect(state.subject.values).toEqual({a: [7]});
	});

	test('goes back step by step and then says that there is nothing left', () => {
		const state = run(start(), type('7'), enter, type('8'), enter, 'undo', 'undo');
		expect(state.subject).toBe(empty);
		expect(run(state, 'undo').notes[0]?.text).toContain('nothing to undo');
	});
});

describe('moving', () => {
	test('arrows stop at both ends and say so', () => {
		expect(run(start('early'), 'previous')).toMatchObject({promptId: 'early', notes: [{kind: 'note'}]});
		expect(run(start('page'), 'next')).toMatchObject({promptId: 'page', notes: [{kind: 'note'}]});
	});

	test('leaves typed characters behind', () => {
		expect(run(start(), type('7'), 'next', 'previous').typed).toBe('');
	});

	test('to another stop goes to its first open question', () => {
		expect(run(start('page'), 'previousStop').promptId).toBe('a');
		expect(run(start(), 'previousStop').promptId).toBe('early');
		expect(run(start('early'), 'previousStop').promptId).toBe('early');
	});

	test('from a page with Enter goes to what is needed, else to what follows the page', () => {
		expect(run(start('page', {values: {a: [1]}, skipped: []}), enter).promptId).toBe('b');
		expect(run(start('page', {values: {a: [1], b: [2]}, skipped: []}), enter).promptId).toBe('page');
	});

	test('a required question that was put off is asked again at the end of its stop', () => {
		const state = run(start(), 'skip', type('8'), enter);
		expect(state.promptId).toBe('a');
		expect(run(state, 'skip').promptId).toBe('page');
	});

	test('an answer leads to the next open question of its stop, put off or not, never elsewhere', () => {
		const notes: Notes = {values: {b: [2]}, skipped: ['a', 'early', 'kind']};
		expect(run(start('early', notes), type('7'), enter).promptId).toBe('kind');
		expect(run(start('late', notes), type('7'), enter).promptId).toBe('a');
	});

	test('a drawer leads back to where it was opened, by its key, by Esc of nothing typed, and at its end', () => {
		const inDrawer = run(start(), {kind: 'drawer', drawer: 'kit'});
		expect(inDrawer).toMatchObject({promptId: 'drawer', cameFrom: 'a'});
		expect(run(inDrawer, {kind: 'drawer', drawer: 'kit'}).promptId).toBe('a');
		expect(run(inDrawer, 'back').promptId).toBe('a');
		expect(run(inDrawer, 'help', 'back')).toMatchObject({promptId: 'drawer', isHelpShown: false});
		expect(run(inDrawer, 'nextStop').promptId).toBe('a');
		expect(run(inDrawer, type('7'), enter).promptId).toBe('a');
	});
});

describe('the table in the place of the question', () => {
	const two: Notes = {values: {a: [1], b: [2]}, skipped: []};

	test('has a cursor that starts at the row of the question, moves, and leads to a question', () => {
		const shown = run(start('a', two), 'table');
		expect(shown.table?.row).toBe('a');
		const below = run(shown, {kind: 'row', by: 1});
		expect(below).toMatchObject({promptId: 'a', table: {row: 'b'}});
		expect(run(below, 'goToRow')).toMatchObject({promptId: 'b', table: undefined});
	});

	test('goes away without moving anything', () => {
		const state = run(start('a', two), 'table', {kind: 'row', by: 1}, 'table');
		expect(state).toMatchObject({promptId: 'a', table: undefined});
	});
});

describe('jumping by name', () => {
	const jump = (text: string) => run(start(), 'jump', {kind: 'jumpType', text});

	test('goes to the first question whose words begin with what was typed', () => {
		expect(run(jump('la'), 'jumpGo').promptId).toBe('late');
		expect(run(jump('fig ea'), 'jumpGo').promptId).toBe('early');
	});

	test('tells questions of the same name apart by the stop', () => {
		expect(run(jump('fig dr'), 'jumpGo').promptId).toBe('drawer');
		expect(run(jump('fig kit'), 'jumpGo').promptId).toBe('drawer');
	});

	test('takes another of those that fit by the arrows', () => {
		expect(run(jump('fig'), {kind: 'jumpMove', by: 1}, 'jumpGo').promptId).toBe('b');
	});

	test('says so where nothing fits, and moves nothing', () => {
		expect(run(jump('zzz'), 'jumpGo')).toMatchObject({promptId: 'a', notes: [{kind: 'note'}]});
	});
});

test('`reduceRound` changes nothing in the state it was given', () => {
	const before = start();
	const frozen = Object.freeze({...before, past: Object.freeze([...before.past])});
	expect(run(frozen, type('7'), enter, 'undo', 'help', 'table', 'arm', 'skip').promptId).toBeDefined();
	expect(frozen).toEqual(before);
});

test('`currentPrompt` falls back to the first question where the prompt is gone', () => {
	expect(currentPrompt(round, {...start(), promptId: 'gone'}).id).toBe('early');
});

test('typed text is cut at a length that nobody types', () => {
	expect(run(start(), type('1'.repeat(500))).typed).toHaveLength(120);
});
