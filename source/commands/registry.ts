import type {Command} from './command.ts';

type Entry = {
	readonly name: string;
	/** The same line as the command's own; here so that the list of commands loads none of them. */
	readonly summary: string;
	readonly load: () => Promise<{readonly command: Command}>;
};

/**
Every command, in the order of the help. A command's file exports `command` and is loaded only when it is called.
To add one: write `commands/NAME.ts` and a line here; help, completion and tests follow from this list.
*/
export const registry: readonly Entry[] = [
	{
		name: 'walk',
		summary: 'Walk the round at the seat, question by question',
		load: () => import('./walk.ts'),
	},
	{
		name: 'solve',
		summary: 'Show what to dial in: distances or delays, trims, crossovers',
		load: () => import('./solve.ts'),
	},
	{
		name: 'check',
		summary: 'Check a profile: the file, its readings, what is missing',
		load: () => import('./check.ts'),
	},
	{
		name: 'place',
		summary: 'Show where everything stands: angles, symmetry, what to move, aiming',
		load: () => import('./place.ts'),
	},
	{
		name: 'room',
		summary: 'Compute standing waves, the bass at every seat, boundary dips, first reflections',
		load: () => import('./room.ts'),
	},
	{
		name: 'arrange',
		summary: 'Plan where seats and subs go: what if, which spot, show me better',
		load: () => import('./arrange.ts'),
	},
	{
		name: 'sheet',
		summary: 'Print the page for the cabinet door',
		load: () => import('./sheet.ts'),
	},
	{
		name: 'wiring',
		summary: 'List cables with lengths, gauges and labels; what to buy; power',
		load: () => import('./wiring.ts'),
	},
	{
		name: 'blend',
		summary: 'Make subs and speakers add up: delay, polarity, crossovers, headroom',
		load: () => import('./blend.ts'),
	},
	{
		name: 'signals',
		summary: 'Write test signals as WAV files: noise, tones, channel count',
		load: () => import('./signals.ts'),
	},
	{
		name: 'hear',
		summary: 'Read recordings of a round: arrivals, polarity, levels, decay, and the blend',
		load: () => import('./hear.ts'),
	},
	{
		name: 'response',
		summary: 'Show and compare responses: what was recorded, or curves of other programs',
		load: () => import('./response.ts'),
	},
	{
		name: 'proof',
		summary: 'Hold the second round of readings against what the settings should give',
		load: () => import('./proof.ts'),
	},
	{
		name: 'diff',
		summary: 'Compare profiles: what moved, what is set differently, and why',
		load: () => import('./diff.ts'),
	},
	{
		name: 'history',
		summary: 'Show all profiles of a room, oldest to newest, and what drifted',
		load: () => import('./history.ts'),
	},
	{
		name: 'new',
		summary: 'Begin a profile for a room',
		load: () => import('./new.ts'),
	},
	{
		name: 'list',
		summary: 'List your profiles, newest first, then the demos',
		load: () => import('./list.ts'),
	},
	{
		name: 'copy',
		summary: 'Start a new round from an older profile',
		load: () => import('./copy.ts'),
	},
	{
		name: 'schema',
		summary: 'Print the JSON Schema of profile files',
		load: () => import('./schema.ts'),
	},
	{
		name: 'completion',
		summary: 'Print a completion script for your shell',
		load: async () => ({command: (await import('./completion.ts')).completionOf(loadAll)}),
	},
];

async function loadAll(): Promise<readonly Command[]> {
	return Promise.all(registry.map(async ({load}) => (await load()).command));
}

/** What runs when no command is named: the app, or without a terminal the newest settings. */
export const home = (): Promise<{readonly command: Command}> => import('./home.ts');
