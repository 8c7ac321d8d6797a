import {readFileSync} from 'node:fs';
import {expect, test} from 'vitest';
import type {CommandContext} from '../../source/commands/command.ts';
import {registry} from '../../source/commands/registry.ts';
import type {LengthUnit} from '../../source/profile/types.ts';
import {lengthUnits} from '../../source/profile/units/lengthUnit.ts';

type Flags = Readonly<Record<string, unknown>>;

/** What a command prints for scripts about an invented profile whose unit is another. */
async function printed(name: string, profile: string, unit: LengthUnit | undefined, flags: Flags) {
	const url = new URL(profile, import.meta.url);
	const text = JSON.stringify({...JSON.parse(readFileSync(url, 'utf8')), lengthUnit: unit});
	const lines: string[] = [];
	const context: CommandContext = {
		input: name === 'diff' ? [new URL('../fixtures/attic-2025.json', import.meta.url).pathname, '-'] : ['-'],
		flags: {json: true, ...flags},
		out: line => lines.push(line),
		say: () => {},
		isTerminal: false,
		columns: 80,
		readStandardInput: async () => new TextEncoder().encode(text),
		now: () => new Date(0),
	};
	const command = await registry.find(entry => entry.name === name)!.load();
	const code = await command.command.run(context);
	return `${code}\n${lines.join('\n')}`;
}

// The display unit is a preference: whatever it is, in the file or by `--length`, scripts get the same bytes.
test.each([
	['solve', {}],
	['check', {}],
	['place', {next: 3}],
	['wiring', {}],
	['proof', {}],
	['blend', {}],
	['blend', {headroom: true}],
	['blend', {pair: true}],
	['diff', {plan: true}],
] as ReadonlyArray<[string, Flags]>)(
	'%s --json gives the same bytes in every unit %j',
	async (name, flags) => {
		for (const profile of ['../fixtures/attic-2026.json', '../../profiles/cellar-2026.json']) {
			const inMetres = await printed(name, profile, 'm', flags);
			expect(inMetres.length).toBeGreaterThan(200);
			for (const unit of lengthUnits) {
				expect(await printed(name, profile, unit, flags)).toBe(inMetres);
				expect(await printed(name, profile, undefined, {...flags, length: unit})).toBe(inMetres);
			}
		}
	},
);
