import {rowMoves} from '../../study/arrangement/row.ts';
import {commandOf} from '../keys/binding.ts';
import type {Press} from '../keys/press.ts';
import {planKeymap} from './keymap.ts';
import {keepVariant, moveBy, stepSize} from './moving.ts';
import {type Planning, type PlanningPanel, startSearch, stopSearch} from './planning.ts';
import {rowAtCursor, shownRows} from './rows.ts';
import {planNoted, pressTyping, reopened} from './typing.ts';

/** What a key made of the planning, and what it asks of the screen. */
export type PlanPressed = {
	readonly plan: Planning;
	readonly wish?: 'back' | 'choose' | 'print';
};

/** Keys that a hand may have typed before one look at the keyboard. */
const mostAtOnce = 8;

/** One key in planning. Pure: files are the screen's. */
export function pressPlan(plan: Planning, press: Press): PlanPressed {
	if (plan.typing) return {plan: pressTyping(plan, press)};
	if (press.key === 'characters') {
		let next: PlanPressed = {plan};
		// Typed faster than they were read: none of them is lost. More than a hand types at once was pasted.
		if (press.text.length > mostAtOnce && !/^(.)\1*$/u.test(press.text)) return next;
		for (const text of press.text) {
			if (next.wish !== undefined) break;
			next = pressPlan(next.plan, {key: 'character', text});
		}

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
				? {plan: planNoted(calm, 'Choose a row that moves a sub first: its place is then marked “not here”.')}
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
			return {plan: planNoted({...plan, order, cursor: 0}, words[order])};
		}

		case 'undo': {
			const before = plan.past.at(-1);
			if (!before) return {plan: planNoted(calm, 'Nothing was changed here yet.')};
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
