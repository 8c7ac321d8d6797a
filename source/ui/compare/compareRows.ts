import type {SolutionRow} from '../../report/solutionRows.ts';
import type {ChannelSolution, OutputSolution, Solution} from '../../study/calibration/result.ts';
import {changeScale} from '../../study/comparison/diff/weights.ts';

/** One channel or output in both profiles; a value that is the same in both stands once. */
export type CompareRow = {
	readonly name: string;
	readonly timing: string;
	readonly trim: string;
	readonly distance: string;
	readonly level: string;
	/** How far apart the two are, in changes that matter; 0 where nothing differs. */
	readonly weight: number;
};

export type Side = {readonly rows: readonly SolutionRow[]; readonly solution: Solution};

const fields = ['timing', 'trim', 'distance', 'level'] as const;
/** Something that only one profile has comes before every change of a value. */
const onlyInOne = 1000;

/** Channels and outputs of two profiles side by side, those that differ most first. */
export function compareRows(older: Side, newer: Side): CompareRow[] {
	const ids = [...new Set([...newer.rows, ...older.rows].map(({id}) => id))];
	const compared = ids.map((id): CompareRow => {
		const before = older.rows.find(row => row.id === id);
		const after = newer.rows.find(row => row.id === id);
		const cells = fields.map(field => [field, cellText(before?.[field], after?.[field])] as const);
		return {
			name: (after ?? before)!.name,
			...(Object.fromEntries(cells) as Record<(typeof fields)[number], string>),
			weight: before && after ? weightOf(older.solution, newer.solution, id) : onlyInOne,
		};
	});
	return compared.toSorted((a, b) => b.weight - a.weight);
}

function cellText(before: string | undefined, after: string | undefined): string {
	if (before === after) return after ?? '';
	return `${before || '–'} → ${after || '–'}`;
}

function weightOf(older: Solution, newer: Solution, id: string): number {
	const before = partOf(older, id);
	const after = partOf(newer, id);
	const changes = [
		apart(before.timing, after.timing, before.isDistance ? changeScale.metres : changeScale.ms),
		apart(before.trim, after.trim, changeScale.dB),
		apart(before.metres, after.metres, changeScale.metres),
		apart(before.level, after.level, changeScale.dB),
	];
	return Math.max(...changes);
}

function apart(before: number | undefined, after: number | undefined, scale: number): number {
	if (before === undefined && after === undefined) return 0;
	return before === undefined || after === undefined ? 1 : Math.abs(after - before) / scale;
}

function partOf({channels, outputs}: Solution, id: string) {
	const channel: ChannelSolution | undefined = channels.find(one => one.id === id);
	const output: OutputSolution | undefined = outputs.find(one => `output:${one.id}` === id);
	return {
		timing: channel?.timing?.stepped ?? output?.delayMs?.stepped,
		isDistance: channel?.timing?.kind === 'distance',
		trim: channel?.trimDb?.stepped ?? output?.gainDb?.stepped,
		metres: channel?.distance?.metres,
		level: channel?.level?.decibels,
	};
}
