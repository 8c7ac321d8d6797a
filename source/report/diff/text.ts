import type {ProfileDiff} from '../../study/comparison/diff/profileDiff.ts';
import {markdownText} from '../markdownText.ts';
import {remarkLines} from '../remarks.ts';
import {sentenceOf} from '../said/said.ts';
import {tableLines} from '../table.ts';
import {wrap} from '../wrap.ts';
import {type DiffTextOptions, diffSections, moreText} from './sections.ts';

/** `Garden studio: Autumn (2025-10-04) → Spring (2026-04-18)`. */
export function diffTitle({older, newer, sameRoom}: ProfileDiff): string {
	const of = ({name, date, room}: typeof older) => `${sameRoom ? '' : `${room}, `}${name} (${date})`;
	return `${sameRoom ? `${newer.room}: ` : ''}${of(older)} → ${of(newer)}`;
}

const nothingDiffers = 'Nothing differs in the room, its readings or its settings.';

/**
What differs between two profiles, as text.

@param options - `isFull` shows every change with every part; `width` in cells.
*/
export function diffText(diff: ProfileDiff, options: DiffTextOptions & {readonly width: number}): string {
	const {width} = options;
	const sections = diffSections(diff, options).flatMap(section => [
		'',
		section.title,
		...(section.kind === 'table'
			? [
					...tableLines(section.columns, section.rows, width - 2).map(line => `  ${line}`),
					...section.after.flatMap(line => wrap(line, width, '  - ')),
				]
			: section.lines.flatMap(line => wrap(line, width, '  - '))),
	]);
	return [
		...wrap(diffTitle(diff), width),
		...(diff.isSame ? ['', nothingDiffers] : []),
		...(!diff.isSame && sections.length === 0
			? ['', ...wrap(`Only readings taken again, none with a change; ${moreText(options)}`, width)]
			: []),
		...sections,
		...remarkLines(diff.remarks, width, options.say),
	].join('\n');
}

/** What differs between two profiles, as Markdown. */
export function diffMarkdown(diff: ProfileDiff, options: DiffTextOptions): string {
	const row = (cells: readonly string[]) => `| ${cells.map(markdownText).join(' | ')} |`;
	const bullet = (text: string) => `- ${markdownText(text)}`;
	const sections = diffSections(diff, options).flatMap(section => {
		if (section.kind === 'sentences')
			return ['', `## ${markdownText(section.title)}`, '', ...section.lines.map(bullet)];
		const used = section.columns.map((_, index) => section.rows.some(cells => cells[index] !== ''));
		const only = <Value>(values: readonly Value[]) => values.filter((_, index) => used[index]);
		const columns = only(section.columns);
		return [
			'',
			`## ${markdownText(section.title)}`,
			'',
			row(columns.map(({title}) => title)),
			`| ${columns.map(({align}) => (align === 'right' ? '--:' : '---')).join(' | ')} |`,
			...section.rows.map(cells => row(only(cells))),
			...(section.after.length > 0 ? ['', ...section.after.map(bullet)] : []),
		];
	});
	return [
		`# ${markdownText(diffTitle(diff))}`,
		...(diff.isSame ? ['', nothingDiffers] : []),
		...sections,
		...(diff.remarks.length > 0
			? ['', '## Remarks', '', ...diff.remarks.map(remark => bullet(sentenceOf(remark, options.say)))]
			: []),
	].join('\n');
}
