import type {Profile} from '../../profile/types.ts';
import {remarkLines} from '../../report/remarks.ts';
import {sayIn} from '../../report/said/say.ts';
import {notHereAt} from '../../study/arrangement/notHere.ts';
import {rowMoves} from '../../study/arrangement/row.ts';
import {commandOf} from '../keys/binding.ts';
import type {Press} from '../keys/press.ts';
import {planKeymap} from './keymap.ts';
import {keepVariant, movableThings, moveBy, stepSize, takeThing, thingMeant} from './moving.ts';
import {openPlan, type Planning, type PlanningPanel, startSearch, stopSearch} from './planning.ts';
import {readRoomWords} from './roomWords.ts';
import {rowAtCursor, shownRows} from './rows.ts';

/** What a key made of the planning, and what it asks of the screen. */
export type PlanPressed = {
	readonly plan: Planning;
	readonly wish?: 'back' | 'choose' | 'print';
};

const note = (plan: Planning, text: string, kind: 'note' | 'no' = 'note'): Planning => ({
	...plan,
	notes: [{kind, text}],
});

/** One key in planning. Pure: files are the screen's. */
export function pressPlan(plan: Planning, press: Press): PlanPressed {
	if (plan.typing) return {plan: pressTyping(plan, press)};
	if (press.key === 'characters') {
		let next: PlanPressed = {plan};
		// Held arrows come one by one; letters that arrive together are no commands.
		if (/^(.)\1*$/u.test(press.text))
			for (const text of press.text) next = pressPlan(next.plan, {key: 'character', text});
		return next;
	}

	const command = commandOf(planKeymap, plan.moving ? 'moving' : 'rows', press);
	const calm: Planning = {...plan, notes: []};
	if (plan.moving) {
		switch (command) {
			case 'left':
				return {plan: moveBy(plan, -1, 0)};
			case 'right':
				return {plan: moveBy(plan, 1, 0)};
			case 'up':
				return {plan: moveBy(plan, 0, -1)};
			case 'down':
				return {plan: moveBy(plan, 0, 1)};
			case 'finer':
				return {plan: stepSize(plan, -1)};
			case 'wider':
				return {plan: stepSize(plan, 1)};
			case 'keep':
				return {plan: keepVariant(plan)};
			case 'back':
				return {plan: {...calm, moving: undefined}};
			case 'move':
				return {plan: {...calm, typing: {what: 'thing', text: ''}}};
			case 'curve':
				return {plan: viewed(calm, 'curve')};
			case 'help':
				return {plan: viewed(calm, 'help')};
			default:
				return {plan};
		}
	}

	const rows = shownRows(plan);
	switch (command) {
		case 'up':
		case 'down': {
			const by = command === 'up' ? -1 : 1;
			if (plan.view !== 'plan' && plan.view !== 'curve')
				return {plan: {...calm, from: Math.max(0, plan.from + by)}};
			return {plan: {...calm, cursor: Math.max(0, Math.min(rows.length - 1, plan.cursor + by))}};
		}

		case 'search':
			return {plan: plan.search ? stopSearch(plan) : startSearch(calm)};
		case 'move':
			return {plan: {...calm, typing: {what: 'thing', text: ''}}};
		case 'room':
			return {plan: {...calm, typing: {what: 'room', text: ''}}};
		case 'notHere': {
			const count = rowMoves(plan.space, rowAtCursor(plan)).filter(({kind}) => kind === 'sub').length;
			return count === 0
				? {plan: note(calm, 'Choose a row that moves a sub first: its place is then marked “not here”.')}
				: {plan: {...calm, typing: {what: 'notHere', text: ''}}};
		}

		case 'curve':
		case 'moves':
		case 'why':
		case 'help':
			return {plan: viewed(calm, command)};
		case 'order': {
			const order = plan.order === 'lift' ? 'angles' : plan.order === 'angles' ? 'cable' : 'lift';
			const words = {
				lift: 'By what has to be lifted.',
				angles: 'Nearest to the published angles first.',
				cable: 'Least cable first.',
			};
			return {plan: note({...plan, order, cursor: 0}, words[order])};
		}

		case 'undo': {
			const before = plan.past.at(-1);
			if (!before) return {plan: note(calm, 'Nothing was changed here yet.')};
			const past = plan.past.slice(0, -1);
			if (before.profile === plan.profile) return {plan: {...calm, kept: before.kept, cursor: 0, past}};
			return {plan: reopened(plan, before.profile, 'Taken back.', past)};
		}

		case 'choose':
			return {plan: calm, wish: 'choose'};
		case 'print':
			return {plan: calm, wish: 'print'};
		case 'back':
			if (plan.view !== 'plan') return {plan: {...calm, view: 'plan', from: 0}};
			return plan.search ? {plan: stopSearch(plan)} : {plan: calm, wish: 'back'};
		default:
			return {plan};
	}
}

function viewed(plan: Planning, view: PlanningPanel): Planning {
	return {...plan, view: plan.view === view ? 'plan' : view, from: 0};
}

function pressTyping(plan: Planning, press: Press): Planning {
	const {typing} = plan;
	if (!typing) return plan;
	switch (press.key) {
		case 'character':
		case 'characters':
			return {...plan, notes: [], typing: {...typing, text: (typing.text + press.text).slice(0, 120)}};
		case 'erase':
			return {...plan, typing: {...typing, text: [...typing.text].slice(0, -1).join('')}};
		case 'eraseAll':
			return {...plan, typing: {...typing, text: ''}};
		case 'escape':
			return {...plan, notes: [], typing: undefined};
		case 'enter':
			return typing.what === 'thing'
				? typedThing(plan, typing.text)
				: typing.what === 'room'
					? typedRoom(plan, typing.text)
					: typedNotHere(plan, typing.text);
		default:
			return plan;
	}
}

function typedThing(plan: Planning, text: string): Planning {
	const id = thingMeant(plan, text);
	if (id !== undefined) return takeThing(plan, id);
	const names = movableThings(plan).map(({name}, i) => `${i + 1} ${name}`);
	return note(plan, `“${text.trim()}” is none of them: ${names.join(', ')}.`, 'no');
}

function typedRoom(plan: Planning, text: string): Planning {
	if (text.trim() === '') return {...plan, notes: [], typing: undefined};
	const read = readRoomWords(text, plan.profile, plan.space.room.shape);
	if (!read.ok) return note(plan, read.why, 'no');
	return reopened(plan, read.profile, `Taken: ${read.said}.`);
}

/** Marks where a sub of the chosen row would stand; a number before the reason says which of several. */
function typedNotHere(plan: Planning, text: string): Planning {
	const subs = rowMoves(plan.space, rowAtCursor(plan)).filter(({kind}) => kind === 'sub');
	const [, digits, rest = ''] = /^\s*(\d?)\s*(.*)$/u.exec(text) ?? [];
	const move = subs[digits ? Number(digits) - 1 : 0];
	if (!move) return note(plan, `Type a number from 1 to ${subs.length}, then the reason.`, 'no');
	const {profile} = plan;
	const feature = notHereAt(move.to, plan.space.room.shape, rest.trim());
	const room = {...profile.room, features: [...(profile.room.features ?? []), feature]};
	return reopened(
		plan,
		{...profile, room},
		'Marked for good: nothing is offered there any more. s searches again.',
	);
}

/** The planning of a changed profile: what was found no longer holds, what was kept by hand is judged anew. */
function reopened(plan: Planning, profile: Profile, text: string, past?: Planning['past']): Planning {
	const opened = openPlan(profile);
	if ('findings' in opened) {
		const lines = remarkLines(opened.findings, 500, sayIn(profile, profile.lengthUnit ?? 'm'));
		return note(plan, lines.slice(2).join(' ').replaceAll('  - ', ''), 'no');
	}

	const stopped = plan.search ? stopSearch(plan) : plan;
	return note(
		{
			...opened,
			view: stopped.view === 'curve' ? 'curve' : 'plan',
			order: stopped.order,
			past: past ?? [...plan.past, {profile: plan.profile, kept: plan.kept}],
		},
		text,
	);
}
