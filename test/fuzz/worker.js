// Works through seeds one after the other until it is stopped, and tells before each call what it is about to do, so that
// one that never ends is known too.
import {readFileSync} from 'node:fs';
import {parentPort, workerData} from 'node:worker_threads';
import {calls, runCall} from './commands.js';
import {runSession} from './keys.js';
import {profileText, spoilt} from './profiles.js';
import {randomFrom} from './random.js';

const {bundle, projectFolder, firstSeed, endsAt} = workerData;
const subject = await import(bundle);
const {parseProfile, serialiseProfile, profileJsonSchema, visibleText} = subject;
const schema = profileJsonSchema();
const demos = ['test/fixtures/attic-2025', 'test/fixtures/attic-2026', 'profiles/cellar-2026'].map(name =>
	JSON.parse(readFileSync(`${projectFolder}/${name}.json`, 'utf8')),
);
const tell = (kind, more) => parentPort.postMessage({kind, ...more});

for (let seed = firstSeed; Date.now() < endsAt; seed++) {
	const random = randomFrom(seed);
	const text = profileText(random, schema, demos);
	const fail = (what, problem) => tell('fall', {seed, what, problem, text});
	tell('begin', {seed, what: 'parse', text});
	try {
		for (let count = 0; count < 5; count++) parseProfile(spoilt(random, text), 'case');
		const parsed = parseProfile(text, 'case');
		tell('count', {parsed: 6, valid: Number(parsed.ok)});
		if (!parsed.ok) continue;
		const again = parseProfile(serialiseProfile(parsed.profile), 'case');
		if (!again.ok || serialiseProfile(again.profile) !== serialiseProfile(parsed.profile))
			fail('round trip', 'not the same again');
		const bytes = new TextEncoder().encode(text);
		for (let count = 0; count < 4; count++) {
			const call = random.pick(calls);
			const what = `${call.name} ${JSON.stringify(call.flags)}`;
			tell('begin', {seed, what, text});
			const problem = await runCall(subject, visibleText, call, bytes, projectFolder);
			tell('count', {calls: 1});
			if (problem) fail(what, problem);
		}

		if (!random.chance(0.05)) continue;
		tell('begin', {seed, what: 'keys', text});
		const {keys, shown, problem} = await runSession(subject, random, parsed.profile);
		tell('count', {sessions: 1, keys, frames: shown});
		if (problem) fail('keys', problem);
	} catch (error) {
		fail('fuzzer', String(error?.stack ?? error));
	}
}

tell('done', {});
