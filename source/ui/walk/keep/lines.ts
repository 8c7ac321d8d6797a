import type {Profile} from '../../../profile/types.ts';
import {sentenceOf} from '../../../report/said/said.ts';
import {wrap} from '../../../report/wrap.ts';
import type {ScreenLine} from '../../parts/lines.tsx';
import {situationOf} from '../dialIn/situation.ts';
import type {WalkFacts} from '../page.ts';
import {openText} from '../proof/openText.ts';
import {planOf, proofOf} from '../proof/proofOf.ts';
import {sayFor} from '../sayFor.ts';
import {solutionOf} from '../solution.ts';
import {nextOf} from './next.ts';

type Said = readonly [text: string, style?: ScreenLine['style']];

/** What the file holds: what is decided, stale, missing and proven, what comes next, and what was put off. */
export function keepLines(profile: Profile, columns: number, walk: WalkFacts): ScreenLine[] {
	const put = ([text, style]: Said): ScreenLine[] =>
		wrap(text, columns, '  ').map(line => ({text: line, style}));
	const next = nextOf(profile, walk.status);
	return [
		...put([`${profile.name} is kept`, 'strong']),
		...put([heldText(profile), 'quiet']),
		{text: ''},
		...[...readingsSaid(walk), ...settingsSaid(profile), proofSaid(profile), ...remarksSaid(profile)].flatMap(
			put,
		),
		{text: ''},
		...put([next.text, 'value']),
		...put([putOffText(walk)]),
		...put([
			'd shows the page for the cabinet door; w writes it beside the profile to print, l the cable labels.',
		]),
		...put(['c tells what changed since an older profile. q leaves; the walk goes on here next time.']),
	];
}

function heldText({tape, meter, settings = []}: Profile): string {
	const count = (list: readonly {readonly setAside?: boolean}[] | undefined) =>
		(list ?? []).filter(({setAside}) => !setAside).length;
	const many = (number: number, one: string, more: string) => `${number} ${number === 1 ? one : more}`;
	const parts = [
		many(count(tape), 'tape reading', 'tape readings'),
		many(count(meter), 'meter reading', 'meter readings'),
		many(
			settings.filter(({origin}) => origin !== 'found').length,
			'decided set of settings',
			'decided sets of settings',
		),
	];
	return `${parts.join(', ')}. Every answer went to disk as it was taken.`;
}

function readingsSaid({status}: WalkFacts): Said[] {
	const open = status.filter(({state, id}) => state === 'open' && id !== 'dialIn');
	if (open.length === 0) return [['✓ Readings: all that the settings need.', 'good']];
	return open.map(({name, answered, required}) => [
		`? ${name}: ${required - answered} still needed for the settings.`,
		'doubt',
	]);
}

function settingsSaid(profile: Profile): Said[] {
	const situation = situationOf(profile);
	switch (situation.kind) {
		case 'nothing':
			return [['? Settings: nothing to type in yet.', 'doubt']];
		case 'undecided':
			return [['? Settings: computed, not decided. Nothing has been typed in.', 'doubt']];
		case 'stale': {
			const since = dayText(situation.set.decidedAt);
			return [
				[
					`? Settings: stale. Decided${since}; newer readings give others for ${situation.differing.join(', ')}.`,
					'doubt',
				],
			];
		}

		case 'decided': {
			const {items, set} = situation;
			const values = items.flatMap(item => item.values);
			const ticked = values.filter(({isDone}) => isDone).length;
			const isWhole = ticked === values.length;
			return [
				[
					`${isWhole ? '✓' : '?'} Settings: decided${dayText(set.decidedAt)}, ${ticked} of ${values.length} values ticked as standing in the boxes.`,
					isWhole ? 'good' : 'doubt',
				],
			];
		}
	}
}

function dayText(moment: string | undefined): string {
	return moment === undefined ? '' : ` on ${moment.slice(0, 10)}`;
}

function proofSaid(profile: Profile): Said {
	const plan = planOf(profile);
	if (plan.length === 0) return ['– Proof: no second round yet.', 'quiet'];
	const {verdict, readings, unjudged} = proofOf(profile);
	if (verdict === 'none') return ['– Proof: no second round yet.', 'quiet'];
	const closed = plan.filter(({taken, settled}) => taken === 0 && settled).length;
	const read = `${plan.filter(({taken}) => taken > 0).length} of ${plan.length} read${closed > 0 ? `, ${closed} closed by a recording` : ''}`;
	if (verdict === 'met') return [`✓ Proof: met, ${read}.`, 'good'];
	if (verdict === 'open') {
		const unread = plan.filter(({taken, settled}) => taken === 0 && !settled).length;
		const again = readings.filter(reading => reading.verdict === 'again').length;
		return [`? Proof: open, ${openText(unread, again, unjudged.length)}.`, 'doubt'];
	}

	const names = new Set(readings.filter(reading => reading.verdict === 'missed').map(({name}) => name));
	return [`! Proof: missed at ${[...names].join('; ')}; ${read}.`, 'trouble'];
}

function remarksSaid(profile: Profile): Said[] {
	return solutionOf(profile)
		.remarks.filter(({kind}) => kind !== 'note')
		.map(remark => [`? ${sentenceOf(remark, sayFor(profile))}`, 'doubt']);
}

function putOffText({status, prompts}: WalkFacts): string {
	const putOff = prompts.filter(
		({isAnswered, isRequired, kind}) => !isAnswered && !isRequired && kind !== 'page',
	);
	if (putOff.length === 0) return '';
	const byStop = status
		.map(({id, name}) => ({name, count: putOff.filter(({stop}) => stop === id).length}))
		.filter(({count}) => count > 0);
	return `Left out, none of it needed: ${byStop.map(({name, count}) => `${name} ${count}`).join(', ')}.`;
}
