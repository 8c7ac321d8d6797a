import {describe, expect, test} from 'vitest';
import {globalFlags} from '../../source/commands/flags.ts';
import {registry} from '../../source/commands/registry.ts';

test('no command is listed twice', () => {
	const names = registry.map(({name}) => name);
	expect(new Set(names).size).toBe(names.length);
});

describe.each(registry)('$name', ({name, summary, load}) => {
	test('is listed with its own name and summary', async () => {
		const {command} = await load();
		expect({name: command.name, summary: command.summary}).toEqual({name, summary});
	});

	test('has no flag of the name of a global one', async () => {
		const {command} = await load();
		expect(Object.keys(command.flags ?? {}).filter(flag => flag in globalFlags)).toEqual([]);
	});

	test('has examples that call it with flags that it knows', async () => {
		const {command} = await load();
		expect(command.examples.length).toBeGreaterThan(0);
		const known = Object.keys({...command.flags, ...globalFlags});
		for (const [call] of command.examples) {
			expect(call.split(/\s+/).slice(0, 2)).toEqual(['roomtare', name]);
			for (const [, flag] of call.matchAll(/ --([a-z-]+)/g)) {
				expect(known).toContain(flag!.replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase()));
			}
		}
	});
});
