import {spawn} from 'node:child_process';
import {join} from 'node:path';
import {createInterface} from 'node:readline';
import {oneThread, pythonWith} from '../python.js';
import {loadSource, median, projectFolder, quantile} from '../tools.js';

const folder = 'source/study/arrangement';
const sloped = {
	kind: 'ceiling',
	widthMetres: 5,
	lengthMetres: 6,
	across: 0,
	places: [
		{atMetres: 0, heightMetres: 2.7},
		{atMetres: 5, heightMetres: 1.9},
	],
};
const seats = [0, -0.65, 0.65].map((off, i) => ({id: `seat${i + 1}`, at: [2.5 + off, 3.8, 1.1]}));

/** Two subs, 80 places along the walls, 20 rows of seats; every arrangement is judged in 20 draws. */
function spaceOf(source) {
	const places = source.subPlaces(
		sloped,
		seats.map(({at}) => at),
		[],
		0.22,
	);
	if (places.length < 80) throw new Error(`80 places wanted, ${places.length} found`);
	return {
		room: {shape: sloped, decay: {seconds: 0.4, from: 'estimated'}, speedOfSound: 343},
		seats,
		subs: [
			{id: 'sub1', at: [0.3, 0.3, 0.22], isFixed: false},
			{id: 'sub2', at: [4.7, 0.3, 0.22], isFixed: false},
		],
		places: places.slice(0, 80),
		rowShiftsMetres: Array.from({length: 20}, (_, i) => Math.round((i - 9) * 5) / 100),
		steps: {delayStepMs: 0.1, mostDelayMs: 20, gainStepDb: 0.5, leastGainDb: -20, canInvert: true},
	};
}

const load = () =>
	loadSource(
		`${folder}/search.ts`,
		`${folder}/subPlaces.ts`,
		`${folder}/planBench.ts`,
		`${folder}/draws.ts`,
		'source/science/numeric/finished.ts',
		'source/study/room/modes.ts',
	);

function searched(source, space) {
	let longest = 0;
	const work = source.searchArrangements(space);
	for (;;) {
		const start = performance.now();
		const {done, value} = work.next();
		if (done) return {found: value, longest};
		longest = Math.max(longest, performance.now() - start);
	}
}

export default [
	{
		name: 'Modes of a sloped room to 200 Hz',
		goal: {most: 100, unit: 'ms'},
		run: async ({rounds}) => {
			const source = await load();
			const times = [];
			for (let round = 0; round < rounds(21) + 2; round++) {
				const start = performance.now();
				source.roomModes(sloped, 200, 343);
				if (round >= 2) times.push(performance.now() - start);
			}

			return {value: median(times), note: `median of ${times.length}`};
		},
	},
	{
		name: 'Search of two subs, 80 places, 20 rows, 20 draws',
		goal: {most: 2000, unit: 'ms'},
		run: async ({rounds}) => {
			const source = await load();
			const space = spaceOf(source);
			searched(source, space);
			const times = [];
			let longest = 0;
			for (let round = 0; round < rounds(7); round++) {
				const start = performance.now();
				longest = Math.max(longest, searched(source, space).longest);
				times.push(performance.now() - start);
			}

			return {
				value: median(times),
				note: `median of ${times.length}, modes included; longest wait between two steps ${longest.toFixed(0)} ms`,
			};
		},
	},
	{
		name: 'The sums of that search',
		goal: {most: 1, unit: '× numpy'},
		run: async ({rounds, pairedRatio}) => {
			const source = await load();
			const space = spaceOf(source);
			const {modes} = source.finished(source.drawnModes(space.room));
			const low = modes.filter(({frequencyHertz}) => frequencyHertz <= 200).length;
			// Sources, seats, rows looked at, draws and frequencies of the first look, its modes; choices judged in full, and theirs.
			const sizes = [82, 3, 7, 4, 16, low, 32, 20, 32, modes.length];
			const child = spawn(
				pythonWith('numpy'),
				[join(projectFolder, 'test/bench/fixtures/numpySearch.py'), ...sizes.map(String)],
				{stdio: ['pipe', 'pipe', 'inherit'], env: {...process.env, ...oneThread}},
			);
			const lines = createInterface({input: child.stdout})[Symbol.asyncIterator]();
			await lines.next();
			// The compiler's own time is the start's, and measured there.
			for (let round = 0; round < rounds(6); round++) searched(source, space);
			try {
				const {value, note} = await pairedRatio(
					() => {
						const start = process.cpuUsage();
						searched(source, space);
						const {user, system} = process.cpuUsage(start);
						return (user + system) / 1000;
					},
					async () => {
						child.stdin.write('\n');
						return Number((await lines.next()).value);
					},
					rounds(7),
				);
				return {value, note: `${note} of CPU; ours with modes, shapes and settings, theirs the sums alone`};
			} finally {
				child.stdin.end();
			}
		},
	},
	{
		name: 'A sub moved by an arrow key: the bass at three seats in 20 draws',
		goal: {most: 16, unit: 'ms'},
		run: async ({rounds}) => {
			const source = await load();
			const space = spaceOf(source);
			const bench = source.planBench(space);
			const places = {subs: space.subs.map(({at}) => at), seats: seats.map(({at}) => at), lifted: 1};
			const times = [];
			for (let round = 0; round < rounds(60) + 10; round++) {
				const subs = [[0.4 + 0.01 * round, 0.3, 0.22], places.subs[1]];
				const start = performance.now();
				bench.judge({...places, subs});
				if (round >= 10) times.push(performance.now() - start);
			}

			return {
				value: median(times),
				note: `median, 99th percentile ${quantile(times, 0.99).toFixed(1)} ms`,
			};
		},
	},
];
