import {readdirSync} from 'node:fs';
import {join} from 'node:path';
import {builtProgram, projectFolder} from '../tools.js';

const probe = join(projectFolder, 'test/bench/fixtures/peakMemory.cjs');

export default {
	name: 'Memory, solve --json of the demo',
	goal: {most: 1.5, unit: '× node -e 0'},
	run: ({rounds, pairedRatio, runNode}) => {
		const peakKilobytes = args => {
			const {output} = runNode(['-r', probe, ...args], {stdio: ['ignore', 'ignore', 'pipe', 'pipe']});
			return Number(String(output[3]));
		};

		const demos = join(projectFolder, 'profiles');
		const demo = join(demos, readdirSync(demos).sort().at(-1));
		return pairedRatio(
			() => peakKilobytes([builtProgram, 'solve', demo, '--json']),
			() => peakKilobytes(['-e', '0']),
			rounds(11),
			'kB',
		);
	},
};
