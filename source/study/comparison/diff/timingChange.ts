import type {Match, SettingChange} from './profileDiff.ts';
import {asDelay, type TimingSide, timingParts} from './timingParts.ts';
import {changeScale} from './weights.ts';

export type TimingOf = {
	readonly side: (TimingSide & {readonly sigma: number}) | undefined;
	readonly value: number | undefined;
	readonly kind: 'delay' | 'distance' | undefined;
};

/** One channel's change of delay or distance entry, split into its causes. */
export function timingChange(match: Match, older: TimingOf, newer: TimingOf): SettingChange[] {
	if (older.value === newer.value && older.kind === newer.kind) return [];
	const kind = newer.kind ?? older.kind ?? 'delay';
	const unit = kind === 'delay' ? 'ms' : 'm';
	const common = {
		box: 'receiver',
		about: match.newer,
		name: match.name,
		setting: kind,
		unit,
		before: older.value,
		after: newer.value,
	} as const;
	if (older.value === undefined || newer.value === undefined) {
		const side = older.value === undefined ? 'older' : 'newer';
		return [{...common, parts: [], notSplit: `not set in the ${side} profile`, weight: 1}];
	}

	if (older.kind !== newer.kind) {
		if (!older.side || !newer.side) {
			// The old value is in another unit than the new one and cannot stand beside it.
			const notSplit = `the entry was a ${older.kind} and is a ${newer.kind}`;
			return [{...common, before: undefined, parts: [], notSplit, weight: 1}];
		}

		const before = asDelay(older.side);
		const after = asDelay(newer.side);
		const change = after.dialled - before.dialled;
		return [
			{
				...common,
				setting: 'delay',
				unit: 'ms',
				before: before.dialled,
				after: after.dialled,
				change,
				parts: timingParts(before, after),
				notSplit: `the entry was a ${older.kind} and is a ${newer.kind}; both are shown as the delay they stand for`,
				weight: Math.abs(change) / changeScale.ms,
			},
		];
	}

	const change = newer.value - older.value;
	const weight = Math.abs(change) / (unit === 'ms' ? changeScale.ms : changeScale.metres);
	if (!older.side || !newer.side) {
		const notSplit = `no distance in the ${older.side ? 'newer' : 'older'} profile`;
		return [{...common, change, parts: [{cause: 'unexplained', amount: change}], notSplit, weight}];
	}

	const sigma = Math.hypot(older.side.sigma, newer.side.sigma);
	return [{...common, change, sigma, parts: timingParts(older.side, newer.side), weight}];
}
