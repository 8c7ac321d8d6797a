import {mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {builtProgram, projectFolder} from '../tools.js';

const count = 200_000;

/** The demo with its readings repeated, each with a slip of its own, until there are so many. */
function manyReadings() {
	const profile = JSON.parse(readFileSync(join(projectFolder, 'profiles/cellar-2026.json'), 'utf8'));
	const repeat = (readings, key, step) =>
		Array.from({length: count / 2}, (_, index) => {
			const reading = readings[index % readings.length];
			return {...reading, [key]: reading[key] + ((index % 7) - 3) * step};
		});
	return {
		...profile,
		tape: repeat(profile.tape, 'metres', 0.001),
		meter: repeat(profile.meter, 'decibels', 0.1),
	};
}

const timed = (name, args, most) => ({
	name,
	goal: {most, unit: 's'},
	async run({rounds, median, runNode}) {
		const folder = mkdtempSync(join(tmpdir(), 'roomtare-bench-'));
		try {
			const path = join(folder, 'many.json');
			writeFileSync(path, JSON.stringify(manyReadings()));
			const seconds = Array.from({length: rounds(5)}, () => {
				const start = performance.now();
				runNode([builtProgram, args[0], path, ...args.slice(1)]);
				return (performance.now() - start) / 1000;
			});
			return {value: median(seconds), note: `median of ${seconds.length} whole runs`};
		} finally {
			rmSync(folder, {recursive: true, force: true});
		}
	},
});

export default [
	timed('200,000 observations, solve --json', ['solve', '--json'], 3),
	timed('200,000 observations, check', ['check'], 3),
];
