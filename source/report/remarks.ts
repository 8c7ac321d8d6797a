import type {FindingKind} from '../profile/finding.ts';
import {subjectText} from '../profile/names.ts';
import {type Sayable, saidParts} from './said/said.ts';
import type {Say} from './said/say.ts';
import {wrap} from './wrap.ts';

const headings: Readonly<Record<FindingKind, string>> = {
	problem: 'Problems',
	doubt: 'Doubts',
	advice: 'Advice',
	note: 'Notes',
};

/**
Findings as text, grouped by how serious they are, the worst first. What is said alike of several things is said once,
with all their names. Empty where there are none.
*/
export function remarkLines(remarks: readonly Sayable[], width: number, say: Say): string[] {
	return (Object.keys(headings) as FindingKind[]).flatMap(kind => {
		const ofKind = remarks.filter(remark => remark.kind === kind);
		if (ofKind.length === 0) return [];
		return ['', headings[kind], ...foldedTexts(ofKind, say).flatMap(text => wrap(text, width, '  - '))];
	});
}

/** How many sentences `remarkLines` makes of findings: what is said alike of several counts once. */
export function sentenceCount(remarks: readonly Sayable[], say: Say): number {
	return foldedTexts(remarks, say).length;
}

/** The names of what a finding is about, one by one, so that no name is said twice. */
function subjectsOf({about}: Sayable, subject: string | undefined, say: Say): string[] {
	if (subject === undefined) return [];
	return typeof about === 'object' ? about.map(id => say.name(id)) : [subject];
}

/** Each sentence with its subject before it; those that differ by their subject alone become one. */
function foldedTexts(remarks: readonly Sayable[], say: Say): string[] {
	const groups = new Map<string, {subjects: string[]; said: string}>();
	for (const remark of remarks) {
		const {subject, said} = saidParts(remark, say);
		const key = subject === undefined ? said : `${remark.code}\n${said}`;
		const group = groups.get(key) ?? {subjects: [], said};
		for (const one of subjectsOf(remark, subject, say))
			if (!group.subjects.includes(one)) group.subjects.push(one);
		groups.set(key, group);
	}

	return [...groups.values()].map(({subjects, said}) =>
		subjects.length > 0 ? `${subjectText(subjects)}: ${said}` : said,
	);
}
