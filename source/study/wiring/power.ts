import {finding} from '../../profile/finding.ts';
import type {Profile} from '../../profile/types.ts';
import type {PlateRating, WiringFinding} from './facts.ts';
import type {OutletBudget} from './result.ts';

/**
Share of a rating that a load lasting for hours may take.

@see NFPA 70 (National Electrical Code) 210.19 and 210.20: 125 % of the continuous load, from memory; other countries' rules differ.
*/
export const continuousShare = 0.8;

type Limit = {readonly share: number; readonly limit: PlateRating};

/** What hangs on each outlet, strip or uninterruptible supply, against its tightest rating. */
export function powerBudget(profile: Profile): {outlets: OutletBudget[]; remarks: WiringFinding[]} {
	const {outlets = [], loads = []} = profile.wiring ?? {};
	const remarks: WiringFinding[] = [];
	for (const {name, on} of loads) {
		if (!outlets.some(({id}) => id === on)) {
			remarks.push(finding('problem', 'load-without-outlet', [name], {outlet: on}));
		}
	}

	const budgets = outlets.map(outlet => {
		const own = loads.filter(({on}) => on === outlet.id);
		const watts = own.reduce((sum, load) => sum + load.watts, 0);
		const voltAmperes = own.reduce((sum, load) => sum + load.watts / (load.powerFactor ?? 1), 0);
		const {limitAmperes, limitWatts, limitVoltAmperes, volts} = outlet;
		const limits: Limit[] = [
			...(limitAmperes === undefined
				? []
				: [{share: voltAmperes / (limitAmperes * volts), limit: {value: limitAmperes, unit: 'A'} as const}]),
			...(limitWatts === undefined
				? []
				: [{share: watts / limitWatts, limit: {value: limitWatts, unit: 'W'} as const}]),
			...(limitVoltAmperes === undefined
				? []
				: [{share: voltAmperes / limitVoltAmperes, limit: {value: limitVoltAmperes, unit: 'VA'} as const}]),
		];
		const tightest = limits.reduce<Limit | undefined>(
			(worst, each) => (worst && worst.share >= each.share ? worst : each),
			undefined,
		);
		remarks.push(...remarkOnOutlet(outlet.id, watts, tightest));
		return {
			id: outlet.id,
			name: outlet.name,
			loads: own.map(({name, watts: each}) => ({name, watts: each})),
			watts,
			voltAmperes,
			share: tightest?.share,
			limit: tightest && `${tightest.limit.value} ${tightest.limit.unit}`,
		};
	});
	return {outlets: budgets, remarks};
}

function remarkOnOutlet(id: string, watts: number, tightest: Limit | undefined): WiringFinding[] {
	if (!tightest) return [finding('doubt', 'outlet-unrated', [id])];
	const facts = {watts, ...tightest};
	if (tightest.share > 1) return [finding('problem', 'outlet-overloaded', [id], facts)];
	if (tightest.share > continuousShare) return [finding('advice', 'outlet-close', [id], facts)];
	return [];
}
