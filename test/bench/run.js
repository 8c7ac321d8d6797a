// Benchmarks: `npm run bench`, `npm run bench -- --smoke` (few rounds: does every case still run?), and with words
// after it only the cases whose name or file contains one of them. Speed depends on the machine, so that every figure
// is a ratio to a reference measured in the same run, turn by turn, unless the goal itself is a time. Goals not met
// are shown and do not fail; a case that cannot run does.
//
// A case is a file in `cases/` with a default export, or a list of them:
//
//	export default {
//		name: 'Start of --version',
//		goal: {most: 1.6, unit: '× node -e 0'},
//		run: async tools => ({value: 1.2, note: 'median of 25'}),
//	};
import {readdirSync} from 'node:fs';
import {tools} from './tools.js';

const words = process.argv.slice(2).filter(word => !word.startsWith('--'));
const isSmoke = process.argv.includes('--smoke');
const casesFolder = new URL('cases/', import.meta.url);

const rows = [['case', 'measured', 'goal', '', 'note']];
let failures = 0;
for (const file of readdirSync(casesFolder).sort()) {
	const {default: exported} = await import(new URL(file, casesFolder).href);
	for (const {name, goal, run} of [exported].flat()) {
		if (words.length > 0 && !words.some(word => name.includes(word) || file.includes(word))) continue;
		const limit = 'most' in goal ? `≤ ${goal.most} ${goal.unit}` : `≥ ${goal.least} ${goal.unit}`;
		process.stderr.write(`${name} … `);
		try {
			const {value, note = ''} = await run(tools(isSmoke));
			if (!Number.isFinite(value)) throw new Error(`measured ${value}`);
			const isMet = 'most' in goal ? value <= goal.most : value >= goal.least;
			rows.push([name, `${Number(value.toPrecision(3))}`, limit, isMet ? 'met' : 'NOT MET', note]);
			process.stderr.write('done\n');
		} catch (error) {
			failures++;
			rows.push([name, '–', limit, 'FAILED', String(error?.message ?? error).split('\n')[0]]);
			process.stderr.write(`failed\n${error?.stack ?? error}\n`);
		}
	}
}

const widths = rows[0].map((_, column) => Math.max(...rows.map(row => row[column].length)));
for (const row of rows)
	console.log(
		row
			.map((cell, column) => cell.padEnd(widths[column]))
			.join('  ')
			.trimEnd(),
	);
if (failures > 0) console.log(`${failures} cases could not run.`);
if (isSmoke) console.log('Smoke run: few rounds, the figures say little.');
process.exitCode = failures > 0 ? 1 : 0;
