/** A curve read from text columns. */
export type TextCurve = {
	/** Ascending, each once. */
	readonly frequenciesHz: Float64Array;
	readonly levelsDb: Float64Array;
	/** Absent where no third column is there. */
	readonly phasesDegrees?: Float64Array;
	/** Lines that are no numbers: headings and comments. */
	readonly skippedLines: number;
};

const plainNumber = /^[-+]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][-+]?\d+)?$/;
const leastRows = 3;

/**
Reads columns of frequency, level and phase from any program: tabs, blanks, semicolons or commas between them, point or comma
as decimal sign, comments and headings passed over.

@returns The curve; `undefined` where fewer than three lines hold a frequency and a level.
*/
export function curveFromText(text: string): TextCurve | undefined {
	const rows = new Map<number, readonly number[]>();
	let skippedLines = 0;
	for (const line of text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/)) {
		const trimmed = line.trim();
		if (trimmed === '') continue;
		const values = numbersOf(trimmed);
		if (!values) skippedLines += 1;
		else rows.set(values[0]!, values);
	}

	const sorted = [...rows.values()].sort((a, b) => a[0]! - b[0]!);
	if (sorted.length < leastRows) return undefined;
	const column = (index: number) => Float64Array.from(sorted, row => row[index]!);
	return {
		frequenciesHz: column(0),
		levelsDb: column(1),
		...(sorted.every(({length}) => length > 2) && {phasesDegrees: column(2)}),
		skippedLines,
	};
}

function numbersOf(line: string): number[] | undefined {
	const cells = line.includes(';')
		? line.split(';')
		: /[\t ]/.test(line)
			? line.split(/[\t ]+/).map(cell => cell.replace(/,$/, ''))
			: line.split(',');
	const values: number[] = [];
	for (const cell of cells.map(each => each.trim().replace('−', '-'))) {
		if (cell === '') continue;
		if (!plainNumber.test(cell)) break;
		values.push(Number(cell.replace(',', '.')));
	}

	const [hertz, level] = values;
	const isUsable =
		hertz !== undefined && level !== undefined && hertz > 0 && hertz <= 200_000 && Math.abs(level) <= 300;
	return isUsable && values.every(Number.isFinite) ? values : undefined;
}

/** Level of a curve at a frequency, dB, straight over log f; its ends hold on beyond them. */
export function curveLevelAt({frequenciesHz, levelsDb}: TextCurve, hertz: number): number {
	const last = frequenciesHz.length - 1;
	if (hertz <= frequenciesHz[0]!) return levelsDb[0]!;
	if (hertz >= frequenciesHz[last]!) return levelsDb[last]!;
	const next = frequenciesHz.findIndex(value => value > hertz);
	const [low, high] = [frequenciesHz[next - 1]!, frequenciesHz[next]!];
	const share = Math.log(hertz / low) / Math.log(high / low);
	return levelsDb[next - 1]! + share * (levelsDb[next]! - levelsDb[next - 1]!);
}
