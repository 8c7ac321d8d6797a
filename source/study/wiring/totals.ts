import {conductorText} from '../../profile/units/conductor.ts';
import type {Cable, PurchaseTotal} from './result.ts';

/** What to buy: the cut lengths of all cables not yet laid, by kind and conductor. */
export function purchaseTotals(cables: readonly Cable[]): PurchaseTotal[] {
	const totals = new Map<string, {cables: number; metres: number; unknown: number}>();
	for (const cable of cables) {
		if (cable.done) continue;
		const conductor = cable.conductor ?? cable.needs;
		const what = conductor ? `${cable.kind}, ${conductorText(conductor)}` : cable.kind;
		const total = totals.get(what) ?? {cables: 0, metres: 0, unknown: 0};
		total.cables += 1;
		total.metres += cable.cutMetres ?? 0;
		total.unknown += cable.cutMetres === undefined ? 1 : 0;
		totals.set(what, total);
	}

	return [...totals].map(([what, total]) => ({what, ...total}));
}
