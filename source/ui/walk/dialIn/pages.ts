import type {Profile} from '../../../profile/types.ts';
import {lfeTick, masterTick} from './inForceBefore.ts';
import type {DialItem, DialValue} from './items.ts';

/** One line of a box's page. */
export type BoxRow = DialValue & {
	readonly title: string;
	readonly itemId: string;
	readonly caution?: string;
};

/** What a box shows on one page of its own: all distances, all trims, or one output. */
export type DialPage = {
	readonly id: string;
	readonly title: string;
	readonly box: DialItem['box'];
	readonly rows: readonly BoxRow[];
};

/** Pages of a receiver in the order of its menus; each is the values of one label. */
const receiverPages = [
	['Distance', 'Distances'],
	['Delay', 'Delays'],
	['Trim', 'Trims'],
	['Crossover', 'Crossovers'],
	['Polarity', 'Polarity'],
] as const;

/** The items of a set as the boxes show them, page by page: the receiver's, then each output, the master volume last. */
export function dialPages({channels}: Pick<Profile, 'channels'>, items: readonly DialItem[]): DialPage[] {
	const placeOf = ({id}: DialItem) => channels.findIndex(channel => channel.id === id);
	const own = items.filter(item => placeOf(item) >= 0).toSorted((a, b) => placeOf(a) - placeOf(b));
	const outputs = items.filter(({box}) => box === 'bass processor');
	const lfe = items.filter(({id}) => id === lfeTick);
	const master = items.filter(({id}) => id === masterTick);
	const pages = receiverPages.map(([label, title]): DialPage => {
		const rows = own.flatMap(item => valueRows(item).filter(row => row.label === label));
		const low = label === 'Crossover' ? lfe.flatMap(valueRows) : [];
		return {id: label, title, box: 'receiver', rows: [...rows, ...low]};
	});
	const single = [...outputs, ...master].map((item): DialPage => {
		const rows = valueRows(item).map(row => ({...row, title: row.label}));
		return {id: item.id, title: item.title, box: item.box, rows};
	});
	return [...pages, ...single].filter(({rows}) => rows.length > 0);
}

function valueRows(item: DialItem): BoxRow[] {
	return item.values.map(value => ({...value, title: item.title, itemId: item.id, caution: item.caution}));
}

/** The page and row that are shown: where one was, else the first that is not typed in. */
export function placeInPages(
	pages: readonly DialPage[],
	tick: string | undefined,
): {readonly page: number; readonly row: number} {
	const find = (fits: (row: BoxRow) => boolean) => {
		const page = pages.findIndex(({rows}) => rows.some(fits));
		return page < 0 ? undefined : {page, row: pages[page]!.rows.findIndex(fits)};
	};

	return find(row => row.tick === tick) ?? find(({isDone}) => !isDone) ?? {page: 0, row: 0};
}
