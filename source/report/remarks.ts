import type {Remark} from '../calibration/result.ts';
import {wrap} from './wrap.ts';

const headings: Readonly<Record<Remark['kind'], string>> = {
	problem: 'Problems',
	doubt: 'Doubts',
	advice: 'Advice',
	note: 'Notes',
};

/**
Remarks as text, grouped by how serious they are, the worst first. Empty where there are none.

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
		return [
			'',
			headings[kind],
			...ofKind.flatMap(remark => wrap(withSubject(remark, nameOf), width, '  - ')),
		];
	});
}

function withSubject({about, text}: Remark, nameOf: (id: string) => string): string {
	if (about === undefined || [about, nameOf(about)].some(name => text.includes(name))) return text;
	return `${nameOf(about)}: ${text}`;
}
