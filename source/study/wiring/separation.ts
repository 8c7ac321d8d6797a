import {finding} from '../../profile/finding.ts';
import type {Profile} from '../../profile/types.ts';
import {minimumSeparationMetres} from '../../science/acoustics/cableSeparation.ts';
import type {WiringFinding} from './facts.ts';

/** Stretches where mains and signal cables run closer together than they should, and entries that name no cable. */
export function checkSeparation(profile: Profile): WiringFinding[] {
	const {connections = [], parallelRuns = []} = profile.wiring ?? {};
	return parallelRuns.flatMap((run, index): WiringFinding[] => {
		const mains = connections.find(({id}) => id === run.mains);
		const signal = connections.find(({id}) => id === run.signal);
		if (!mains || !signal)
			return [finding('problem', 'parallel-unknown', [mains ? run.signal : run.mains], {index})];
		const usualMetres = minimumSeparationMetres(
			mains.screened ?? false,
			signal.screened ?? false,
			run.divider,
		);
		const {gapMetres, parallelMetres} = run;
		if (gapMetres >= usualMetres) return [];
		const facts = {mains: run.mains, parallelMetres, gapMetres, usualMetres};
		return [finding('advice', 'separation', [run.signal], facts)];
	});
}
