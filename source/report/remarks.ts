import {listed} from '../profile/names.ts';
import type {Remark} from '../study/calibration/result.ts';
import {wrap} from './wrap.ts';

const headings: Readonly<Record<Remark['kind'], string>> = {
	problem: 'Problems',
	doubt: 'Doubts',
	advice: 'Advice',
	note: 'Notes',
};

/**
Remarks as text, grouped by how serious they are, the worst first. What is said alike of several things is said once,
with all their names. Empty where there are none.

@param nameOf - What a remark is about, by id; put before a text that does not name it itself.
*/
export function remarkLines(
	remarks: readonly Remark[],
	width: number,
	nameOf: (id: string) => string = id => id,
): string[] {
	return (Object.keys(headings) as Array<Remark['kind']>).flatMap(kind => {
		const ofKind = remarks.filter(remark => remark.kind === kind);
		if (ofKind.length === 0) return [];
		return ['', headings[kind], ...foldedTexts(ofKind, nameOf).flatMap(text => wrap(text, width, '  - '))];
	});
}

/** Each text with its subject before it; texts that differ by their subject alone become one. */
function foldedTexts(remarks: readonly Remark[], nameOf: (id: string) => string): string[] {
	const groups = new Map<string, {subjects: string[]; said: string}>();
	for (const remark of remarks) {
		const {subject, said} = split(remark, nameOf);
		const key = subject === undefined ? said : `${remark.code}\n${said}`;
		const group = groups.get(key) ?? {subjects: [], said};
		if (subject !== undefined && !group.subjects.includes(subject)) group.subjects.push(subject);
		groups.set(key, group);
	}

	return [...groups.values()].map(({subjects, said}) =>
		subjects.length > 0 ? `${listed(subjects)}: ${said}` : said,
	);
}

/** The name before a text and what it says; no name where the text tells within a sentence what it is about. */
function split({about, text}: Remark, nameOf: (id: string) => string): {subject?: string; said: string} {
	if (about === undefined) return {said: text};
	const names = [nameOf(about), about];
	const before = names.find(name => text.startsWith(`${name}: `));
	const said = before === undefined ? text : text.slice(before.length + 2);
	if (names.some(name => said.includes(name))) return {said: text};
	return {subject: nameOf(about), said};
}
