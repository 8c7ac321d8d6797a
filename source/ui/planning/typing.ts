import type {Profile} from '../../profile/types.ts';
import {remarkLines} from '../../report/remarks.ts';
import {sayIn} from '../../report/said/say.ts';
import {notHereAt} from '../../study/arrangement/notHere.ts';
import {rowMoves} from '../../study/arrangement/row.ts';
import type {Press} from '../keys/press.ts';
import {movableThings, takeThing, thingMeant} from './moving.ts';
import {openPlan, type Planning, stopSearch} from './planning.ts';
import {readRoomWords} from './roomWords.ts';
import {rowAtCursor} from './rows.ts';

/** The planning with a word about the last key. */
export const planNoted = (plan: Planning, text: string, kind: 'note' | 'no' = 'note'): Planning => ({
	...plan,
	notes: [{kind, text}],
});

/** One key while something is typed at the foot of the screen. */
export function pressTyping(plan: Planning, press: Press): Planning {
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
	return planNoted(plan, `“${text.trim()}” is none of them: ${names.join(', ')}.`, 'no');
}

function typedRoom(plan: Planning, text: string): Planning {
	if (text.trim() === '') return {...plan, notes: [], typing: undefined};
	const read = readRoomWords(text, plan.profile, plan.space.room.shape);
	if (!read.ok) return planNoted(plan, read.why, 'no');
	return reopened(plan, read.profile, `Taken: ${read.said}.`);
}

/** Marks where a sub of the chosen row would stand; a number before the reason says which of several. */
function typedNotHere(plan: Planning, text: string): Planning {
	const subs = rowMoves(plan.space, rowAtCursor(plan)).filter(({kind}) => kind === 'sub');
	const [, digits, rest = ''] = /^\s*(\d?)\s*(.*)$/u.exec(text) ?? [];
	const move = subs[digits ? Number(digits) - 1 : 0];
	if (!move) return planNoted(plan, `Type a number from 1 to ${subs.length}, then the reason.`, 'no');
	const {profile} = plan;
	const feature = notHereAt(move.to, plan.space.room.shape, rest.trim());
	const room = {...profile.room, features: [...(profile.room.features ?? []), feature]};
	return reopened(
		plan,
		{...profile, room},
		'Marked for good: nothing is offered there any more. s searches again.',
	);
}

/** The planning of a changed profile: rows that were found or kept no longer hold; undo brings back what was kept. */
export function reopened(plan: Planning, profile: Profile, text: string, past?: Planning['past']): Planning {
	const opened = openPlan(profile);
	if ('findings' in opened) {
		const lines = remarkLines(opened.findings, 500, sayIn(profile, profile.lengthUnit ?? 'm'));
		return planNoted(plan, lines.slice(2).join(' ').replaceAll('  - ', ''), 'no');
	}

	const stopped = plan.search ? stopSearch(plan) : plan;
	return planNoted(
		{
			...opened,
			view: stopped.view === 'curve' ? 'curve' : 'plan',
			order: stopped.order,
			past: past ?? [...plan.past, {profile: plan.profile, kept: plan.kept}],
		},
		text,
	);
}
