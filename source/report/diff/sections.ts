import type {Change, ProfileDiff} from '../../study/comparison/diff/profileDiff.ts';
import type {Say} from '../said/say.ts';
import type {TableColumn} from '../table.ts';
import {changeText} from './changeText.ts';
import type {MovedOnPlan} from './movedOnPlan.ts';
import {
	fullReasons,
	type SettingTextOptions,
	settingValue,
	shortReasons,
	signedAmount,
} from './settingText.ts';

export type DiffTextOptions = SettingTextOptions & {
	readonly say: Say;
	/** Every change and every part of it, not only what matters to the eye. */
	readonly isFull: boolean;
	/** Told in the place of the distances that changed, in the short form. */
	readonly moved?: MovedOnPlan | undefined;
	/** What shows every change: a flag of the command where not given, or a key. */
	readonly moreBy?: string;
};

/** The end of a sentence that tells how to see the rest. */
export function moreText({moreBy = '--full'}: DiffTextOptions): string {
	return `${moreBy} shows them.`;
}

/** A part of the report before it is set as text or Markdown. */
export type Section =
	| {readonly kind: 'sentences'; readonly title: string; readonly lines: readonly string[]}
	| {
			readonly kind: 'table';
			readonly title: string;
			readonly columns: readonly TableColumn[];
			readonly rows: ReadonlyArray<readonly string[]>;
			readonly after: readonly string[];
	  };

const groups: ReadonlyArray<{readonly title: string; readonly kinds: ReadonlyArray<Change['kind']>}> = [
	{title: 'Added, removed, renamed', kinds: ['added', 'removed', 'renamed']},
	{title: 'Distances that changed', kinds: ['moved']},
	{title: 'Replaced or described anew', kinds: ['replaced', 'stated']},
	{title: 'Levels read', kinds: ['level']},
	{title: 'Responses recorded', kinds: ['response']},
	{title: 'Read again without a change', kinds: ['tape read again']},
	{title: 'Cannot be compared', kinds: ['only in one']},
];

/** Lines of one kind that the short form shows; the largest changes are first. */
const shortLines = 6;

function isWorthShowing(change: Change): boolean {
	if (change.kind === 'level' || change.kind === 'response') return !change.isScatter;
	return change.kind !== 'tape read again' && change.kind !== 'only in one';
}

function settingsSection({settings}: ProfileDiff, options: DiffTextOptions): Section[] {
	if (settings.length === 0) return [];
	const shown = options.isFull ? settings : settings.slice(0, 3 * shortLines);
	const rows = shown.map(change => {
		const where = change.box === 'processor' ? `processor ${change.name}` : change.name;
		return [
			where,
			change.setting,
			settingValue(change.before, change, options),
			settingValue(change.after, change, options),
			change.change === undefined ? '' : signedAmount(change.change, change, options),
			options.isFull ? '' : shortReasons(change, options),
		];
	});
	const full = options.isFull
		? shown.map(
				change => `${change.name}, ${change.setting}: ${fullReasons(change, options) || 'no reason found'}.`,
			)
		: [];
	const left = settings.length - shown.length;
	return [
		{
			kind: 'table',
			title: 'Set differently',
			columns: [
				{title: 'where', importance: 10, leastCells: 10},
				{title: 'setting', importance: 9},
				{title: 'before', align: 'right', importance: 6},
				{title: 'after', align: 'right', importance: 8},
				{title: 'change', align: 'right', importance: 5},
				{title: 'why', importance: 7, leastCells: 16},
			],
			rows,
			after: [...full, ...(left > 0 ? [`And ${left} smaller changes; ${moreText(options)}`] : [])],
		},
	];
}

/** What differs, settings first, then readings and gear; in each the larger changes first. */
export function diffSections(diff: ProfileDiff, options: DiffTextOptions): Section[] {
	const moved = options.isFull ? undefined : options.moved;
	const changes = options.isFull
		? diff.changes
		: diff.changes.filter(
				change => isWorthShowing(change) && !(change.kind === 'moved' && moved?.names.includes(change.name)),
			);
	const sentences = groups.flatMap(({title, kinds}): Section[] => {
		const ofKind = changes.filter(({kind}) => kinds.includes(kind));
		if (ofKind.length === 0) return [];
		const shown = options.isFull ? ofKind : ofKind.slice(0, shortLines);
		const left = ofKind.length - shown.length;
		const lines = shown.map(change => changeText(change, options.lengthUnit, options.isFull));
		return [
			{
				kind: 'sentences',
				title,
				lines: left > 0 ? [...lines, `And ${left} smaller; ${moreText(options)}`] : lines,
			},
		];
	});
	const places: Section[] =
		moved && moved.lines.length > 0 ? [{kind: 'sentences', title: 'Moved', lines: moved.lines}] : [];
	return [...settingsSection(diff, options), ...places, ...sentences];
}
