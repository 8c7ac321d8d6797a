import {formatNumber} from '../../profile/units/decimalText.ts';
import {formatLength} from '../../profile/units/length.ts';
import {ladderCells, ladderTitles} from '../../report/arrangement/ladderCells.ts';
import {ladderRowName} from '../../report/arrangement/rowName.ts';
import {cellWidth, fitCells} from '../../report/fitCells.ts';
import {sayIn} from '../../report/said/say.ts';
import {rowContents} from '../../study/arrangement/row.ts';
import type {ScreenLine} from '../parts/lines.tsx';
import type {Planning, PlanRow} from './planning.ts';
import {measuresOf, shownRows} from './rows.ts';
import {subLetter} from './scene.ts';

/** Rows of the ladder shown at once. */
const mostRows = 7;
/** Names of rows are cut below this only where nothing else is left to leave out. */
const leastNameCells = 29;

export function rowName(planning: Planning, row: PlanRow): string {
	const {profile, space} = planning;
	const unit = profile.lengthUnit ?? 'm';
	// Subs have the letters of the drawing.
	const letters = new Map(space.subs.map(({id}, i) => [id, subLetter(i)]));
	const say = sayIn(profile, unit);
	const short = {...say, name: (id: string) => letters.get(id) ?? say.name(id)};
	return ladderRowName(rowContents(space, row), short, unit);
}

/** The ladder as lines, the chosen row marked; a window that follows the cursor. */
export function ladderLines(planning: Planning, columns: number): ScreenLine[] {
	const rows = shownRows(planning);
	const {moving, space, profile} = planning;
	const cursor = Math.min(planning.cursor, rows.length - 1);
	const unit = profile.lengthUnit ?? 'm';
	const cells = rows.map(row => {
		// “Above” is above only in the order of the ladder.
		const shown = planning.order === 'lift' ? row : {...row, againstAbove: undefined};
		return [rowName(planning, row), ...ladderCells(shown, measuresOf(planning, row.places), unit)];
	});
	const titles = ladderTitles(space.seats.length);
	const widths = titles.map((title, i) =>
		Math.max(cellWidth(title), ...cells.map(row => cellWidth(row[i + 1]!))),
	);
	// What a narrow window cannot hold goes first: cable, view, angles, the hole.
	const shown = titles.map((_, i) => cells.some(row => row[i + 1] !== ''));
	const right = () => widths.reduce((sum, width, i) => sum + (shown[i] ? width + 2 : 0), 0);
	for (const i of [4, 3, 2, 1]) if (columns - 3 - right() < leastNameCells) shown[i] = false;
	// Figures stay beside the names where a window is wide.
	const longest = Math.max(...cells.map(row => cellWidth(row[0]!)), leastNameCells);
	const names = Math.max(8, Math.min(longest + 2, columns - 3 - right()));
	const line = (row: readonly string[]) =>
		fitCells(row[0]!, names) +
		row
			.slice(1)
			.map((cell, i) => (shown[i] ? `  ${fitCells(cell, widths[i]!, i === 5 ? 'left' : 'right')}` : ''))
			.join('');
	const from = Math.min(Math.max(0, cursor - mostRows + 2), Math.max(0, rows.length - mostRows));
	const hidden = rows.length - Math.min(rows.length, mostRows);
	return [
		{text: `   ${line(['ready to lift', ...titles])}`, style: 'quiet'},
		...cells
			.slice(from, from + mostRows)
			.map(
				(row, i): ScreenLine =>
					from + i === cursor && !moving
						? {text: ` › ${line(row)}`, style: 'value'}
						: {text: `   ${line(row)}`},
			),
		...(hidden > 0 ? [{text: `   ${hidden} more rows`, style: 'quiet' as const}] : []),
	];
}

/** The head: the room, how far a search is, and what was assumed, on one line each. */
export function headLines(planning: Planning, columns: number): ScreenLine[] {
	const {profile, space, search} = planning;
	const unit = profile.lengthUnit ?? 'm';
	const {shape} = space.room;
	const length = (metres: number) => formatLength(metres, unit, {stepMetres: 0.01});
	const heights =
		shape.kind === 'ceiling'
			? `ceiling ${length(shape.places[0]!.heightMetres)} to ${length(shape.places.at(-1)!.heightMetres)}`
			: `ceiling ${length(shape.heightMetres)}`;
	const step = search?.step;
	const what = {places: 'places', oneMore: 'one more sub', walls: 'other walls'};
	const searching = search
		? `  Searching${step ? `: ${what[step.what]} ${Math.floor((100 * step.done) / step.of)} %.` : ' …'} s stops with the best so far.`
		: undefined;
	const kept = profile.planned?.withinMetres === undefined ? '' : ', planned';
	const {decay} = space.room;
	const assumed = [
		...space.findings.flatMap(({code, facts}) =>
			code === 'arrange-assumed' && 'what' in facts ? [`${facts.what.join(' and ')} where usual`] : [],
		),
		`ears ${length(space.seats[0]!.at[2])} up`,
		decay.from === 'estimated' ? 'decay 0.25 to 0.65 s' : `decay ${formatNumber(decay.seconds, 2)} s`,
		planning.profile.screen?.widthMetres === undefined ? 'picture not known' : '',
	].filter(Boolean);
	return [
		{
			text: ` ${profile.name}`,
			style: 'strong',
			after: `   ${length(shape.widthMetres)} wide, ${length(shape.lengthMetres)} long, ${heights}${kept}`,
		},
		...(searching === undefined ? [] : [{text: searching, style: 'value' as const}]),
		...(searching === undefined ? [{text: assumedLine(assumed, columns), style: 'quiet' as const}] : []),
	];
}

/** What is assumed, on one line: what a narrow window cannot hold goes from the end, that it can be corrected stays. */
function assumedLine(assumed: readonly string[], columns: number): string {
	for (let count = assumed.length; count > 0; count--) {
		const more = count < assumed.length ? ' and more' : '';
		const line = `  Assumed: ${assumed.slice(0, count).join(', ')}${more}. r corrects any of it.`;
		if (cellWidth(line) <= columns) return line;
	}

	return '  r corrects what is assumed.';
}

/** Two columns of lines beside each other. */
export function besideEach(
	left: readonly string[],
	right: readonly string[],
	leftCells: number,
): ScreenLine[] {
	return Array.from({length: Math.max(left.length, right.length)}, (_, i) => ({
		text: `${fitCells(left[i] ?? '', leftCells)}  ${right[i] ?? ''}`,
	}));
}
