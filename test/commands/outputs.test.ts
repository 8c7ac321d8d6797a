import {readdirSync, readFileSync} from 'node:fs';
import {join, resolve} from 'node:path';
import {expect, test} from 'vitest';
import {registry} from '../../source/commands/registry.ts';
import {Trouble} from '../../source/platform/trouble.ts';
import {profileJsonSchema} from '../../source/profile/file/jsonSchema.ts';
import {visibleText} from '../../source/profile/visibleText.ts';
// @ts-expect-error: plain scripts of the fuzzer, without types.
import {calls, runCall} from '../fuzz/commands.js';
// @ts-expect-error: as above.
import {profileText} from '../fuzz/profiles.js';
// @ts-expect-error: as above.
import {randomFrom} from '../fuzz/random.js';

const projectFolder = resolve(import.meta.dirname, '../..');
const casesFolder = join(projectFolder, 'test/cases');
const demo = JSON.parse(readFileSync(join(projectFolder, 'test/fixtures/attic-2026.json'), 'utf8'));
const subject = {registry, Trouble};

/** Every call on a profile that went wrong: threw what is no trouble, or printed what no output may hold. */
async function wrongCalls(text: string): Promise<unknown[]> {
	const wrong: unknown[] = [];
	for (const call of calls) {
		const problem = await runCall(subject, visibleText, call, Buffer.from(text), projectFolder);
		if (problem) wrong.push([call, problem]);
	}

	return wrong;
}

test.each(readdirSync(casesFolder))(
	'no output of %s holds NaN, Infinity, undefined, nothing or a control character',
	async name => {
		expect(await wrongCalls(readFileSync(join(casesFolder, name), 'utf8'))).toEqual([]);
	},
);

test('nor does any of random profiles, valid and absurd', async () => {
	const schema = profileJsonSchema();
	for (const seed of [11, 12])
		expect(await wrongCalls(profileText(randomFrom(seed), schema, [demo]))).toEqual([]);
});

test('the check itself finds each of these', async () => {
	for (const text of ['a NaN b', '−Infinity dB', 'was a undefined', '{"a": null}', '[object Object]']) {
		const run = async ({out}: {readonly out: (text: string) => void}) => {
			out(text);
			return 0;
		};
		const printing = {Trouble, registry: [{name: 'check', load: async () => ({command: {run}})}]};
		const call = {name: 'check', flags: {json: true}, more: []};
		expect(await runCall(printing, (same: string) => same, call, '', '')).toBeDefined();
	}
});
