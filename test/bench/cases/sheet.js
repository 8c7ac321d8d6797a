import {join} from 'node:path';
import {builtProgram, projectFolder} from '../tools.js';

const demo = join(projectFolder, 'profiles/cellar-2026.json');

const sheetAs = form => ({
	name: `Sheet of the demo, ${form}`,
	goal: {most: 500, unit: 'ms'},
	async run({rounds, median, runNode}) {
		const times = Array.from({length: rounds(15)}, () => {
			const start = performance.now();
			runNode([builtProgram, 'sheet', demo, '--as', form]);
			return performance.now() - start;
		});
		return {value: median(times), note: `median of ${times.length} whole runs`};
	},
});

export default [sheetAs('text'), sheetAs('html')];
