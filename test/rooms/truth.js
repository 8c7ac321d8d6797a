// Tries the product's advice in seeded rooms and prints how often it held. `npm run truth -- --help` says how.
import {parseArgs} from 'node:util';
import {loadSource} from '../bench/tools.js';

const usage = `Usage: npm run truth -- [SHARE...] [--range building|fresh] [--kit known,hidden,anechoic] [--from N] [--count N] [--json]

Shares: blend search proof clean tape levels crossovers hear one pair lines; blend, proof, tape, levels and crossovers where none is named.
Rooms of the range "fresh" are for reporting: build on "building".
`;

const {values, positionals} = parseArgs({
	allowPositionals: true,
	options: {
		range: {type: 'string', default: 'building'},
		kit: {type: 'string', default: 'known,hidden,anechoic'},
		from: {type: 'string', default: '0'},
		count: {type: 'string', default: '250'},
		json: {type: 'boolean', default: false},
		help: {type: 'boolean', default: false},
	},
});
const {tryRooms, truthText, barsOf, emptyTruth, isReached, shareNames} = await loadSource(
	'test/rooms/truth/run.ts',
	'test/rooms/truth/print.ts',
	'test/rooms/truth/share.ts',
);
const shares = positionals.length > 0 ? positionals : ['blend', 'proof', 'tape', 'levels', 'crossovers'];
const kits = values.kit.split(',');
const [from, count] = [Number(values.from), Number(values.count)];
const wrong =
	shares.find(name => !shareNames.includes(name)) ??
	kits.find(kit => !['known', 'hidden', 'anechoic'].includes(kit)) ??
	(['building', 'fresh'].includes(values.range) ? undefined : values.range) ??
	(Number.isInteger(from) && from >= 0 && Number.isInteger(count) && count > 0
		? undefined
		: `--from ${values.from} --count ${values.count}`);
if (values.help || wrong !== undefined) {
	process.stderr.write(wrong === undefined ? usage : `Not understood: ${wrong}\n${usage}`);
	process.exit(values.help ? 0 : 2);
}

const options = {shares, kits, range: values.range, from, count};
const truth = emptyTruth();
let isStopped = false;
process.once('SIGINT', () => {
	isStopped = true;
});
const start = performance.now();
for (const index of tryRooms(options, truth)) {
	const done = index - from + 1;
	const seconds = (performance.now() - start) / 1000;
	if (process.stderr.isTTY || done % 25 === 0)
		process.stderr.write(
			`${done} of ${count} rooms, ${seconds.toFixed(0)} s${process.stderr.isTTY ? '\r' : '\n'}`,
		);
	await new Promise(resolve => setImmediate(resolve));
	if (isStopped) {
		options.count = done;
		break;
	}
}

const bars = barsOf(truth);
process.stdout.write(values.json ? `${JSON.stringify({options, bars, truth})}\n` : truthText(truth, options));
process.exitCode = bars.every(isReached) ? 0 : 1;
