import {readdirSync} from 'node:fs';
import {join} from 'node:path';
import {builtProgram, projectFolder} from '../tools.js';

const demos = join(projectFolder, 'profiles');
const newestDemo = () => join(demos, readdirSync(demos).sort().at(-1));

const start = (name, args, most) => ({
	name,
	goal: {most, unit: '× node -e 0'},
	run: ({rounds, pairedRatio, runNode}) => {
		const all = [builtProgram, ...args()];
		return pairedRatio(
			() => void runNode(all),
			() => void runNode(['-e', '0']),
			rounds(31),
		);
	},
});

export default [
	start('Start, --version', () => ['--version'], 1.6),
	start('Start, --help', () => ['--help'], 1.6),
	start('Start, solve --json of the demo', () => ['solve', newestDemo(), '--json'], 3.2),
	start('Start, solve of the demo as text', () => ['solve', newestDemo()], 2.5),
];
