import {wrap} from '../../report/wrap.ts';
import type {ScreenLine} from '../parts/lines.tsx';
import type {RefusedSave} from './screen.ts';
import {waysOut} from './trouble.ts';

const saveRefused = 'Not saved. Your answers are still here.';
const headings = {
	changed: saveRefused,
	busy: saveRefused,
	failed: saveRefused,
	unsound: saveRefused,
	held: 'This profile is open elsewhere.',
} as const;

/** A refused save, or a file that is open elsewhere, in words, with what can be done about it. */
export function troubleLines({why, text, typed = '', doubted}: RefusedSave, columns: number): ScreenLine[] {
	const ways = waysOut(why);
	const sure = doubted === undefined ? undefined : ways[doubted]!;
	const put = (words: string, indent: string, style?: ScreenLine['style']) =>
		wrap(words, columns, indent).map((line): ScreenLine => ({text: line, style}));
	return [
		{text: `  ${headings[why]}`, style: 'strong'},
		...text.split('\n').flatMap(line => put(line, '  ! ', 'trouble')),
		{text: ''},
		...(sure
			? [...put(`${sure.label}?`, '    '), ...put(sure.givesUp!, '    ')]
			: ways.flatMap(({label}, index) => put(label, `    ${index + 1}  `))),
		{text: ''},
		{text: sure ? `  y and Enter: yes. Enter: no.  ${typed}▌` : `  Number, then Enter:  ${typed}▌`},
	];
}
