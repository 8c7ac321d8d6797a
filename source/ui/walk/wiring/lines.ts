import type {Profile} from '../../../profile/types.ts';
import {sentenceOf} from '../../../report/said/said.ts';
import {wiringText} from '../../../report/wiring/text.ts';
import {wrap} from '../../../report/wrap.ts';
import type {ScreenLine} from '../../parts/lines.tsx';
import {sayFor} from '../sayFor.ts';
import {wiringOf} from './wiringOf.ts';

/** The page of the stop Wiring: how far the cables are, what is wrong, then cables, what to buy, outlets and the order with its cautions. */
export function wiringLines(profile: Profile, columns: number): ScreenLine[] {
	const put = (text: string, style?: ScreenLine['style'], sign = '') =>
		wrap(text, columns, `  ${sign}`).map((line): ScreenLine => ({text: line, style}));
	const say = sayFor(profile);
	const result = wiringOf(profile);
	const {cables, remarks} = result;
	const laid = cables.filter(({done}) => done).length;
	const isBegun = cables.some(({origin}) => origin === 'entered') || result.outlets.length > 0;
	const striking = remarks.filter(({kind}) => kind === 'problem' || kind === 'doubt');
	const text = wiringText(
		{...result, remarks: remarks.filter(remark => !striking.includes(remark))},
		say,
		Math.max(20, columns - 2),
	);
	return [
		...put('Cables, outlets and labels', 'strong'),
		...put(
			isBegun
				? `${laid} of ${cables.length} cables laid. Enter goes on with the questions.`
				: `${cables.length} cables are proposed below; no setting hangs on them. Enter asks about each; ] leaves it for another day.`,
			'quiet',
		),
		...striking.flatMap(remark =>
			remark.kind === 'problem'
				? put(sentenceOf(remark, say), 'trouble', '! ')
				: put(sentenceOf(remark, say), 'doubt', '? '),
		),
		{text: ''},
		...text
			.trimEnd()
			.split('\n')
			.map((line): ScreenLine => ({text: line === '' ? '' : `  ${line}`, style: styleOf(line)})),
	];
}

function styleOf(line: string): ScreenLine['style'] {
	return line.trimStart().startsWith('Caution:') ? 'doubt' : undefined;
}
