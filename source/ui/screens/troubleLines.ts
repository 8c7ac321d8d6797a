import {wrap} from '../../report/wrap.ts';
import type {Line} from '../parts/lines.tsx';
import type {WalkScreen} from './screen.ts';
import {waysOut} from './trouble.ts';

/** A refused save in words, with what can be done about it. */
export function troubleLines({why, text}: NonNullable<WalkScreen['trouble']>, columns: number): Line[] {
	return [
		{text: '  Not saved. Your answers are still here.', style: 'strong'},
		...wrap(text, columns, '  ! ').map(line => ({text: line, style: 'trouble' as const})),
		{text: ''},
		...waysOut(why).map((way, index) => ({text: `    ${index + 1}  ${way}`})),
	];
}
