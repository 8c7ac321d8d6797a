import type {Profile} from '../../profile/types.ts';
import type {Remark} from '../calibration/result.ts';
import type {OutletBudget} from './result.ts';

/**
Share of a rating that a load lasting for hours may take.

@see NFPA 70 (National Electrical Code) 210.19 and 210.20: 125 % of the continuous load, from memory; other countries' rules differ.
*/
export const continuousShare = 0.8;

const electrician = 'Follow local codes and the maker’s instructions.';

/** What hangs on each outlet, strip or battery backup, against its tightest rating. */
export function powerBudget(profile: Profile): {outlets: OutletBudget[]; remarks: Remark[]} {
	const {outlets = [], loads = []} = profile.wiring ?? {};
	const remarks: Remark[] = [];
	for (const {name, on} of loads) {
		if (!outlets.some(({id}) => id === on)) {
			remarks.push({
				kind: 'problem',
				code: 'load-without-outlet',
				about: name,
				text: `${name} hangs on “${on}”, which is not among the outlets. Enter that outlet, or name another.`,
			});
		}
	}

	const budgets = outlets.map(outlet => {
		const own = loads.filter(({on}) => on === outlet.id);
		const watts = own.reduce((sum, load) => sum + load.watts, 0);
		const voltAmperes = own.reduce((sum, load) => sum + load.watts / (load.powerFactor ?? 1), 0);
		const limits = [
			{share: voltAmperes / ((outlet.limitAmperes ?? 0) * outlet.volts), words: `${outlet.limitAmperes} A`},
			{share: watts / (outlet.limitWatts ?? 0), words: `${outlet.limitWatts} W`},
			{share: voltAmperes / (outlet.limitVoltAmperes ?? 0), words: `${outlet.limitVoltAmperes} VA`},
		].filter(
			(_, index) => [outlet.limitAmperes, outlet.limitWatts, outlet.limitVoltAmperes][index] !== undefined,
		);
		const tightest = limits.reduce<(typeof limits)[number] | undefined>(
			(worst, limit) => (worst && worst.share >= limit.share ? worst : limit),
			undefined,
		);
		remarks.push(...remarkOnOutlet(outlet.name, watts, tightest, outlet.id));
		return {
			id: outlet.id,
			name: outlet.name,
			loads: own.map(({name, watts: each}) => ({name, watts: each})),
			watts,
			voltAmperes,
			share: tightest?.share,
			limit: tightest?.words,
		};
	});
	return {outlets: budgets, remarks};
}

function remarkOnOutlet(
	name: string,
	watts: number,
	tightest: {readonly share: number; readonly words: string} | undefined,
	about: string,
): Remark[] {
	if (!tightest) {
		const text = `${name} has no rating entered. Read amperes or watts off its plate before more is plugged in.`;
		return [{kind: 'doubt', code: 'outlet-unrated', about, text}];
	}

	const percent = Math.round(tightest.share * 100);
	if (tightest.share > 1) {
		const text = `${name} carries ${Math.round(watts)} W: ${percent} % of its ${tightest.words}. Move a load to another circuit. ${electrician}`;
		return [{kind: 'problem', code: 'outlet-overloaded', about, text}];
	}

	if (tightest.share > continuousShare) {
		const text = `${name} carries ${Math.round(watts)} W: ${percent} % of its ${tightest.words}, above the 80 % usual for a load that lasts. ${electrician}`;
		return [{kind: 'advice', code: 'outlet-close', about, text}];
	}

	return [];
}
