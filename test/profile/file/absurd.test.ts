import {readFileSync} from 'node:fs';
import {expect, test} from 'vitest';
import {parseProfile} from '../../../source/profile/file/parse.ts';

const parsedCase = (name: string) => {
	const bytes = readFileSync(new URL(`../../cases/${name}.json`, import.meta.url));
	return parseProfile(bytes, name);
};

// Each holds one value near 5e-324 or far below anything physical: arithmetic on it ends in infinities or never.
test.each([
	['tape-sigma', 'tape[0].sigmaMetres'],
	['noise-band', 'meter[2].signal.fromHertz'],
	['trim-step', 'receiver.trim.stepDb'],
	['outlet-limit', 'wiring.outlets[0].limitAmperes'],
	['impedance', 'channels[0].speaker.impedanceOhms'],
	['speaker-q', 'channels[1].speaker.totalQ'],
	['crossover-choice', 'receiver.crossover.choicesHertz[0]'],
	['meter-sigma', 'kit.meterSigmaDb'],
	['headroom-impedance', 'channels[0].speaker.impedanceOhms'],
])('a profile is refused whose %s no thing has', (name, path) => {
	const parsed = parsedCase(name);
	expect(parsed.ok).toBe(false);
	if (!parsed.ok) expect(parsed.problems.map(problem => problem.path)).toContain(path);
});

test('names and keys that steer a terminal or turn the direction of writing are refused', () => {
	const parsed = parsedCase('hostile-text');
	expect(parsed.ok).toBe(false);
	if (parsed.ok) return;
	expect(parsed.problems.map(({path}) => path)).toContain('name');
	expect(parsed.problems.some(({path}) => path.startsWith('settings[0].outputs'))).toBe(true);
});
