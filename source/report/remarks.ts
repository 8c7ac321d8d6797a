import type {Remark} from '../calibration/result.ts';
import {wrap} from './wrap.ts';

const headings: Readonly<Record<Remark['kind'], string>> = {
	problem: 'Problems',
	doubt: 'Doubts',
	advice: 'Advice',
	note: 'Notes',
};

/** Remarks as text, grouped by how serious they are, the worst first. Empty where there are none. */
export function remarkLines(remarks: readonly Remark[], width: number): string[] {
	return (Object.keys(headings) as Array<Remark['kind']>).flatMap(kind => {
		const ofKind = remarks.filter(remark => remark.kind === kind);
		if (ofKind.length === 0) return [];
		return ['', headings[kind], ...ofKind.flatMap(({text}) => wrap(text, width, '  - '))];
	});
}
