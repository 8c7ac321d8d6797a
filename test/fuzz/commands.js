// Every command that reads a profile, in the form of its call: name, flags, words after it.
const demo = 'test/fixtures/attic-2025.json';
const forms = [
	['check', {}],
	['solve', {}],
	['solve', {why: true, exact: true}],
	['place', {}],
	['place', {next: 3, words: true}],
	['sheet', {as: 'text'}],
	['sheet', {as: 'markdown'}],
	['sheet', {as: 'html'}],
	['wiring', {}],
	['blend', {}],
	['blend', {crossover: true}],
	['blend', {headroom: true}],
	['proof', {}],
	['room', {full: true, words: true}],
	['diff', {full: true, as: 'markdown'}, demo],
	['diff', {plan: true}, demo],
];

/** All forms, each as text and as JSON. */
export const calls = forms.flatMap(([name, flags, ...more]) => [
	{name, flags, more},
	{name, flags: {...flags, json: true}, more},
]);

/** What no output may hold: words of a computation that went wrong, and characters that steer a terminal. */
const forbidden =
	/\b(?:NaN|Infinity|undefined)\b|\[object |[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/;

/**
Runs one call on a profile's bytes.

@returns What is wrong with what it did; undefined where nothing is.
*/
export async function runCall({registry, Trouble}, visible, {name, flags, more}, bytes, projectFolder) {
	const entry = registry.find(one => one.name === name);
	if (!entry) return undefined;
	const {command} = await entry.load();
	const known = Object.keys(command.flags ?? {});
	const given = Object.fromEntries(
		Object.entries(flags).filter(([key]) => key === 'json' || known.includes(key)),
	);
	const parts = [];
	let code;
	try {
		code = await command.run({
			input: ['-', ...more.map(word => `${projectFolder}/${word}`)],
			flags: {
				...Object.fromEntries(
					Object.entries(command.flags ?? {}).flatMap(([key, flag]) =>
						flag.default === undefined ? [] : [[key, flag.default]],
					),
				),
				...given,
			},
			out: text => parts.push(text),
			say: () => {},
			isTerminal: false,
			columns: 80,
			readStandardInput: async () => bytes,
			now: () => new Date('2026-04-18T20:00:00Z'),
		});
	} catch (error) {
		return error instanceof Trouble ? undefined : `fault: ${error?.stack ?? error}`;
	}

	if (![0, 1, 2].includes(code)) return `exit code ${code}`;
	const output = visible(parts.join('\n'));
	const found = forbidden.exec(output);
	if (found)
		return `output holds ${JSON.stringify(output.slice(Math.max(0, found.index - 80), found.index + 40))}`;
	if (!flags.json || output === '') return undefined;
	const nothing = /"(\w+)": null/.exec(output);
	if (nothing) return `JSON holds ${nothing[0]}`;
	JSON.parse(output);
	return undefined;
}
