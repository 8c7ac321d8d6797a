import {mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {builtProgram, projectFolder} from '../tools.js';

const demo = id => join(projectFolder, 'profiles', `${id}.json`);

/** A folder of profiles of one room, one every other day, the front right speaker slowly failing. */
function manyProfiles(count) {
	const folder = join(mkdtempSync(join(tmpdir(), 'roomtare-bench-')), 'profiles');
	mkdirSync(folder);
	const profile = JSON.parse(readFileSync(demo('cellar-2026'), 'utf8'));
	for (let index = 0; index < count; index++) {
		const date = new Date(Date.UTC(2020, 0, 1 + 2 * index)).toISOString().slice(0, 10);
		const meter = profile.meter.map(reading =>
			reading.source === 'FR' ? {...reading, decibels: reading.decibels - (1.2 * index) / count} : reading,
		);
		writeFileSync(join(folder, `round-${index}.json`), JSON.stringify({...profile, date, meter}));
	}

	return folder;
}

export default [
	{
		name: 'Start, diff of the two demos',
		goal: {most: 2, unit: '× node -e 0'},
		run: ({rounds, pairedRatio, runNode}) =>
			pairedRatio(
				() => void runNode([builtProgram, 'diff', demo('cellar-2025'), demo('cellar-2026')]),
				() => void runNode(['-e', '0']),
				rounds(31),
			),
	},
	{
		name: 'History over 1000 profiles',
		goal: {most: 1000, unit: 'ms'},
		run({rounds, median, runNode}) {
			const folder = manyProfiles(1000);
			try {
				const times = Array.from({length: rounds(7)}, () => {
					const start = performance.now();
					runNode([builtProgram, 'history', '--profiles', folder]);
					return performance.now() - start;
				});
				return {value: median(times), note: `${times.length} runs, demo profiles of 33 kB`};
			} finally {
				rmSync(join(folder, '..'), {recursive: true, force: true});
			}
		},
	},
];
