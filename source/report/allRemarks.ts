import type {Remark, Solution} from '../calibration/result.ts';

/** Every remark of a solution once, those of channels, subs and outputs before the general ones. */
export function allRemarks(solution: Solution): Remark[] {
	const all = [
		...[...solution.channels, ...solution.subs, ...solution.outputs].flatMap(({remarks}) => remarks),
		...solution.remarks,
	];
	return [...new Map(all.map(remark => [`${remark.code} ${remark.about} ${remark.text}`, remark])).values()];
}
