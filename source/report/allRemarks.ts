import type {Solution} from '../study/calibration/result.ts';
import {distinct, type Sayable} from './said/said.ts';

/** Every remark of a solution once, those of channels, subs and outputs before the general ones. */
export function solutionRemarks(solution: Solution): Sayable[] {
	return distinct<Sayable>([
		...[...solution.channels, ...solution.subs, ...solution.outputs].flatMap(({remarks}) => remarks),
		...solution.remarks,
	]);
}
