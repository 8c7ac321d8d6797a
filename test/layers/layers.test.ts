import {expect, test} from 'vitest';
import {allImports, isLocal, roomOf, sourceFiles} from './sourceTree.ts';

type Allowed = {
	/** Rooms that may be imported with values and types. */
	readonly values: readonly string[];
	/** Rooms of which only types may be imported. */
	readonly types?: readonly string[];
	/** Rooms that may be imported only by `await import(…)`. */
	readonly lazily?: readonly string[];
	readonly packages?: readonly RegExp[];
};

const sciences = ['science/numeric', 'science/signal', 'science/acoustics'];
const model = ['profile', 'profile/ask', 'profile/units'];
const rooms = [
	'study/survey',
	'study/hearing',
	'study/room',
	'study/placement',
	'study/calibration',
	'study/wiring',
	'study/arrangement',
	'study/playing',
	'study/comparison',
];

/** Who may take what from whom, lowest first. A room may always take from itself. */
const table: Readonly<Record<string, Allowed>> = {
	'science/numeric': {values: [], packages: [/^ml-/]},
	'science/signal': {values: ['science/numeric'], packages: [/^fft\.js$/, /^wavefile$/]},
	'science/acoustics': {values: ['science/numeric', 'science/signal']},

	'profile/units': {values: ['profile']},
	// The whole schema is zod's: apart from `profile/file` nobody may take a value from it.
	'profile/schema': {values: ['profile'], packages: [/^zod$/]},
	profile: {values: ['profile/ask', 'profile/units'], types: ['profile/schema']},
	'profile/ask': {values: ['profile', 'profile/units']},
	'profile/generic': {values: ['profile', 'profile/ask', 'profile/units']},
	'profile/file': {values: [...model, 'profile/schema'], packages: [/^zod$/]},

	'study/survey': {values: [...sciences, ...model]},
	'study/hearing': {values: [...sciences, ...model]},
	'study/room': {values: [...sciences, ...model, 'study/survey']},
	'study/placement': {values: [...sciences, ...model, 'study/survey']},
	'study/calibration': {values: [...sciences, ...model, 'study/survey', 'study/hearing']},
	'study/wiring': {values: [...sciences, ...model, 'study/survey']},
	'study/arrangement': {
		values: [
			...sciences,
			...model,
			'study/survey',
			'study/room',
			'study/placement',
			'study/calibration',
			'study/wiring',
		],
	},
	'study/playing': {values: [...sciences, ...model, 'study/hearing', 'study/calibration']},
	'study/comparison': {values: [...sciences, ...model, ...rooms]},

	// Results to strings: a threshold, a median, a sort or a verdict has no place here.
	report: {
		values: ['profile', 'profile/ask', 'profile/units'],
		types: ['science/acoustics', ...rooms],
		packages: [/^d3-/, /^string-width$/],
	},
	platform: {values: ['profile', 'profile/file'], packages: [/^node:/, /^env-paths$/, /^audio-decode$/]},
	ui: {
		values: [...model, 'profile/generic', 'profile/file', ...rooms, 'report'],
		types: ['science/signal'],
		packages: [/^ink$/, /^react(\/|$)/, /^ink-table$/],
	},
	commands: {
		values: [...sciences, ...model, 'profile/generic', 'profile/file', ...rooms, 'report', 'platform'],
		types: ['ui'],
		lazily: ['ui'],
	},
	'work.ts': {values: ['platform', ...rooms]},
	'cli.ts': {values: ['commands', 'platform'], lazily: ['commands'], packages: [/^meow$/]},
};

test('the source folder holds files of every storey', () => {
	const found = new Set(sourceFiles.map(file => roomOf(file)));
	for (const room of ['science/numeric', 'profile', 'study/calibration', 'report', 'ui'])
		expect(found).toContain(room);
	expect(allImports.length).toBeGreaterThan(1000);
});

test('every import goes where its room may go', () => {
	const breaches: string[] = [];
	for (const {from, target, how} of allImports) {
		const room = roomOf(from);
		const allowed = table[room];
		if (!allowed) {
			breaches.push(`${from}: not in a known room`);
			continue;
		}

		if (!isLocal(target)) {
			if (target.startsWith('../') || /\.tsx?$/.test(target))
				breaches.push(`${from} imports ${target}, which is not in source`);
			else if (how !== 'type' && !(allowed.packages ?? []).some(pattern => pattern.test(target)))
				breaches.push(`${from} imports the package ${target}`);
			continue;
		}

		const goal = roomOf(target);
		const isFine =
			goal === room ||
			allowed.values.includes(goal) ||
			(how === 'type' && (allowed.types ?? []).includes(goal)) ||
			(how !== 'value' && (allowed.lazily ?? []).includes(goal));
		if (!isFine) breaches.push(`${from} imports ${target} (${how})`);
	}

	expect(breaches).toEqual([]);
});

/** Circles of a directed graph, each as the path around it, beginning with its first name by the alphabet. */
function circlesOf(edges: ReadonlyMap<string, ReadonlySet<string>>): string[] {
	const done = new Set<string>();
	const circles: string[] = [];
	const visit = (node: string, path: readonly string[]) => {
		const at = path.indexOf(node);
		if (at >= 0) {
			const around = path.slice(at);
			const first = around.indexOf([...around].sort()[0]!);
			circles.push([...around.slice(first), ...around.slice(0, first)].join(' → '));
			return;
		}

		if (done.has(node)) return;
		for (const next of [...(edges.get(node) ?? [])].sort()) visit(next, [...path, node]);
		done.add(node);
	};

	for (const node of [...edges.keys()].sort()) visit(node, []);
	return circles;
}

function edgesBetween(nameOf: (file: string) => string | undefined): Map<string, Set<string>> {
	const edges = new Map<string, Set<string>>();
	for (const {from, target, how} of allImports) {
		if (!isLocal(target) || how === 'lazy') continue;
		const [a, b] = [nameOf(from), nameOf(target)];
		if (!a || !b || (a === b && from !== target)) continue;
		edges.set(a, (edges.get(a) ?? new Set()).add(b));
	}

	return edges;
}

test('no import runs in a circle, types included', () => {
	expect(circlesOf(edgesBetween(file => file))).toEqual([]);
});

test('folders side by side do not lean on each other', () => {
	const folders = new Set(sourceFiles.map(file => file.split('/').slice(0, -1).join('/')).filter(Boolean));
	const breaches: string[] = [];
	for (const parent of folders) {
		// A file of the parent itself is no folder: it may be used by one child and use another.
		const childOf = (file: string) => {
			if (!file.startsWith(`${parent}/`)) return;
			const [child, ...more] = file.slice(parent.length + 1).split('/');
			return more.length > 0 ? `${parent}/${child}` : undefined;
		};
		breaches.push(...circlesOf(edgesBetween(childOf)));
	}

	expect(breaches).toEqual([]);
});
