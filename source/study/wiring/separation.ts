import type {Profile} from '../../profile/types.ts';
import {formatLength} from '../../profile/units/length.ts';
import {minimumSeparationMetres} from '../../science/acoustics/cableSeparation.ts';
import type {Remark} from '../calibration/result.ts';

/** Stretches where mains and signal cables run closer together than they should, and entries that name no cable. */
export function checkSeparation(profile: Profile): Remark[] {
	const {connections = [], parallelRuns = []} = profile.wiring ?? {};
	const unit = profile.lengthUnit ?? 'm';
	return parallelRuns.flatMap((run, index): Remark[] => {
		const mains = connections.find(({id}) => id === run.mains);
		const signal = connections.find(({id}) => id === run.signal);
		if (!mains || !signal) {
			const text = `parallelRuns[${index}] names “${mains ? run.signal : run.mains}”, which is not among the cables. Correct the id.`;
			return [{kind: 'problem', code: 'parallel-unknown', about: mains ? run.signal : run.mains, text}];
		}

		const needed = minimumSeparationMetres(mains.screened ?? false, signal.screened ?? false, run.divider);
		if (run.gapMetres >= needed) return [];
		const show = (metres: number) => formatLength(metres, unit);
		const text = `${run.mains} and ${run.signal} run ${show(run.parallelMetres)} side by side, ${show(run.gapMetres)} apart; ${show(needed)} is the minimum. Part them, or cross at a right angle.`;
		return [{kind: 'advice', code: 'separation', about: run.signal, text}];
	});
}
