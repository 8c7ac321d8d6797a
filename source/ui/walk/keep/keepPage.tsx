import type {Profile} from '../../../profile/types.ts';
import {wrap} from '../../../report/wrap.ts';
import {footerOf} from '../../keys/binding.ts';
import {type Line, Lines} from '../../parts/lines.tsx';
import {scrolled} from '../../parts/scrolled.ts';
import type {Page} from '../page.ts';
import {solutionOf} from '../solution.ts';
import {statusOf} from '../status.ts';
import {promptsFor} from '../stops.ts';
import {type KeepState, keepKeymap, keepMode, keepStart, pressKeep, sheetScreenLines} from './keepState.ts';

/** What the file holds, what still blocks the settings, what was put off; and the page for the cabinet door. */
export const keepPage: Page<KeepState> = {
	start: () => keepStart,
	press: pressKeep,
	keys: (_, state) => footerOf(keepKeymap, keepMode(state)),
	view: ({profile, state, columns, height}) => {
		const said = state.said.flatMap(({isGood, text}) =>
			wrap(`${isGood ? '✓' : '!'} ${text}`, columns, '  ').map(
				(line): Line => ({text: line, style: isGood ? 'good' : 'trouble'}),
			),
		);
		const body: Line[] = state.isSheetShown
			? sheetScreenLines(profile, columns - 2).map(text => ({text: `  ${text}`}))
			: keepLines(profile, columns);
		const room = Math.max(1, height - said.length);
		const shown = state.isSheetShown ? scrolled(body, state.from, room) : body.slice(0, room);
		return <Lines lines={[...shown, ...said]} columns={columns} />;
	},
};

export function keepLines(profile: Profile, columns: number): Line[] {
	const put = (text: string, style?: Line['style']): Line[] =>
		wrap(text, columns, '  ').map(line => ({text: line, style}));
	const count = (list: readonly {readonly setAside?: boolean}[] | undefined) =>
		(list ?? []).filter(({setAside}) => !setAside).length;
	const open = statusOf(profile).filter(({state, id}) => state === 'open' && id !== 'dialIn');
	const dialIn = statusOf(profile).find(({id}) => id === 'dialIn');
	const putOff = promptsFor(profile).filter(({isAnswered, isRequired}) => !isAnswered && !isRequired);
	const byStop = statusOf(profile)
		.map(({id, name}) => ({name, count: putOff.filter(({stop}) => stop === id).length}))
		.filter(({count: left}) => left > 0);
	const remarks = solutionOf(profile).remarks.filter(({kind}) => kind !== 'note');
	return [
		...put(`${profile.name} is kept`, 'strong'),
		...put(
			`${count(profile.tape)} tape readings, ${count(profile.meter)} meter readings, ${(profile.settings ?? []).length} sets of settings. Every answer went to disk as it was taken.`,
			'quiet',
		),
		{text: ''},
		...(open.length === 0
			? put('✓ All that the settings need is there.', 'good')
			: open.flatMap(({name, answered, required}) =>
					put(`? ${name}: ${required - answered} still needed for the settings.`, 'doubt'),
				)),
		...(dialIn?.state === 'open'
			? put(`? Dial-in: ${dialIn.answered} of ${dialIn.required} ticked as standing in the boxes.`, 'doubt')
			: []),
		...remarks.flatMap(({text}) => put(`? ${text}`, 'doubt')),
		{text: ''},
		...(putOff.length === 0
			? put('Nothing was put off.')
			: put(
					`Put off, and worth asking some day: ${byStop.map(({name, count: left}) => `${name} ${left}`).join(', ')}. Enter goes to the first of them.`,
				)),
		...put('d shows the page for the cabinet door, w writes it beside the profile to print.'),
		...put('q leaves. Next time the walk goes on where it stopped.'),
	];
}
