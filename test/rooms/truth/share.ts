/** How often something held, of how many. */
export type Share = {readonly held: number; readonly of: number};

export const shareOf = <T>(all: readonly T[], holds: (one: T) => boolean): Share => ({
	held: all.filter(holds).length,
	of: all.length,
});

/** A share of what is asked for, and whether it is reached. */
export type Bar = {
	readonly what: string;
	readonly share: Share;
	/** Percent, at least or at most; both for a range. */
	readonly atLeast?: number;
	readonly atMost?: number;
};

export const percent = ({held, of}: Share): number => (of === 0 ? Number.NaN : (100 * held) / of);

export function isReached({share, atLeast = 0, atMost = 100}: Bar): boolean {
	const value = percent(share);
	return value >= atLeast && value <= atMost;
}

export const percentText = (share: Share): string =>
	share.of === 0 ? '-' : `${Math.round(percent(share))} %`;

/** One line for a bar: what, how often, what is asked for. */
export function barLine(bar: Bar): string {
	const {what, share, atLeast, atMost} = bar;
	const asked = [atLeast !== undefined && `≥ ${atLeast}`, atMost !== undefined && `≤ ${atMost}`]
		.filter(Boolean)
		.join(', ');
	const value = share.of === 0 ? 'not run' : `${percent(share).toFixed(1)} % of ${share.of}`;
	return `${share.of === 0 ? '  ' : isReached(bar) ? 'ok' : 'NO'}  ${what.padEnd(62)} ${value.padStart(18)}   asked ${asked}`;
}

/** Columns padded to their widest cell; the first to the left, the others to the right. */
export function table(rows: readonly (readonly string[])[]): string[] {
	const widths = (rows[0] ?? []).map((_, column) => Math.max(...rows.map(row => (row[column] ?? '').length)));
	return rows.map(row =>
		row
			.map((cell, column) => (column === 0 ? cell.padEnd(widths[0]!) : cell.padStart(widths[column]!)))
			.join('  '),
	);
}

export const rms = (values: readonly number[]): number =>
	Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);

/** Value below which a share of the values lies (nearest rank). */
export function quantileOf(values: readonly number[], share: number): number {
	const sorted = [...values].sort((a, b) => a - b);
	return sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1))] ?? Number.NaN;
}
