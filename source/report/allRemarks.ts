import type {Remark, Solution} from '../study/calibration/result.ts';

/** Every remark of a solution once, those of channels, subs and outputs before the general ones. */
export function solutionRemarks(solution: Solution): Remark[] {
	return distinctRemarks([
		...[...solution.channels, ...solution.subs, ...solution.outputs].flatMap(({remarks}) => remarks),
		...solution.remarks,
	]);
}

/** Remarks without those that say the same of the same thing again. */
export function distinctRemarks(remarks: readonly Remark[]): Remark[] {
	return [
		...new Map(remarks.map(remark => [`${remark.code} ${remark.about} ${remark.text}`, remark])).values(),
	];
}
