import {wrap} from '../../report/wrap.ts';
import type {Line} from '../parts/lines.tsx';
import type {WalkScreen} from './screen.ts';
import {waysOut} from './trouble.ts';

const saveRefused = 'Not saved. Your answers are still here.';
const headings = {
	changed: saveRefused,
	failed: saveRefused,
	held: 'This profile is open elsewhere.',
} as const;

/** A refused save, or a file that is open elsewhere, in words, with what can be done about it. */
export function troubleLines({why, text}: NonNullable<WalkScreen['trouble']>, columns: number): Line[] {
	return [
		{text: `  ${headings[why]}`, style: 'strong'},
		...wrap(text, columns, '  ! ').map(line => ({text: line, style: 'trouble' as const})),
		{text: ''},
		...waysOut(why).map((way, index) => ({text: `    ${index + 1}  ${way}`})),
	];
}
