import {spawn} from 'node:child_process';
import {mkdtempSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {createInterface} from 'node:readline';
import {largeTapeProfile} from '../fixtures/tapeNetwork.js';
import {oneThread, pythonWith} from '../python.js';
import {loadSource, projectFolder, quantile} from '../tools.js';

const network = 'source/study/survey';

/** The same equations in the form that the reference takes, with the start that the program makes. */
function referenceInput(source, profile) {
	const network = source.surveyNetwork(profile);
	const {points} = network;
	const observations = profile.tape.map((one, index) => source.observationOf(network.ends, one, index));
	const start = source.startState(profile, points, observations);
	const dimensions = points.length * 3;
	const readings = observations.map(one => {
		const ends = {
			points: () => [one.from / 3, one.to / 3, 0, 0],
			plane: () => [one.point / 3, -1, one.axis, one.dimension === undefined ? 0 : 1],
			planes: () => [-1, -1, one.dimension - dimensions, 0],
		};
		return [...ends[one.kind](), one.metres, one.sigmaMetres];
	});
	return {
		network,
		observations,
		start,
		json: JSON.stringify({points: points.length, start: [...start], readings}),
	};
}

/** Starts the reference; `ask` has it adjust once and gives the milliseconds that it took. */
async function reference(json) {
	const folder = mkdtempSync(join(tmpdir(), 'roomtare-bench-'));
	const file = join(folder, 'network.json');
	writeFileSync(file, json);
	const script = join(projectFolder, 'test/bench/fixtures/scipyNetwork.py');
	const child = spawn(pythonWith('scipy'), [script, file], {
		stdio: ['pipe', 'pipe', 'inherit'],
		env: {...process.env, ...oneThread},
	});
	const lines = createInterface({input: child.stdout})[Symbol.asyncIterator]();
	const next = async () => {
		const {value, done} = await lines.next();
		if (done) throw new Error('The reference ended early.');
		return JSON.parse(value);
	};
	return {
		first: await next(),
		ask: () => {
			child.stdin.write('\n');
			return next();
		},
		end: () => {
			child.stdin.end();
			rmSync(folder, {recursive: true, force: true});
		},
	};
}

const load = () =>
	loadSource(
		`${network}/adjust.ts`,
		`${network}/network.ts`,
		`${network}/solveNetwork.ts`,
		`${network}/starts.ts`,
		`${network}/observations.ts`,
	);

async function againstScipy({rounds, pairedRatio}, workOf) {
	const source = await load();
	const profile = largeTapeProfile();
	if (profile.tape.length !== 400) throw new Error(`400 readings wanted, ${profile.tape.length} made`);
	const input = referenceInput(source, profile);
	const scipy = await reference(input.json);
	const whole = input.network;
	const {state} = source.solveNetwork(whole, input.observations, input.start);
	const gap = Math.max(...scipy.first.solution.map((value, index) => Math.abs(value - state[index])));
	if (gap > 1e-6) throw new Error(`Both must find the same places; they differ by ${gap} m.`);
	const work = workOf(source, whole, input);
	for (let warm = 0; warm < 20; warm++) work();
	const {value, note} = await pairedRatio(
		() => {
			work();
		},
		() => scipy.ask(),
		rounds(41),
	);
	scipy.end();
	return {
		value,
		note: `${note}; scipy trf on one thread, ${scipy.first.jacobian} Jacobian; places agree to ${gap.toExponential(0)} m`,
	};
}

export default [
	{
		name: 'Tape network, 400 readings: adjust',
		goal: {most: 1, unit: '× scipy'},
		run: tools =>
			againstScipy(
				tools,
				(source, whole, {observations, start}) =>
					() =>
						source.solveNetwork(whole, observations, start),
			),
	},
	{
		name: 'Tape network, 400 readings: starts, mirror images, tests and all',
		goal: {most: 1, unit: '× scipy'},
		run: tools =>
			againstScipy(
				tools,
				(source, {profile}) =>
					() =>
						// A new object each time: what is remembered of the last one would be looked up, not computed.
						source.adjustNetwork({...profile, tape: [...profile.tape]}),
			),
	},
	{
		name: 'Tape network, 5.1.2 room: one reading more',
		goal: {most: 16, unit: 'ms'},
		run: async ({rounds}) => {
			const source = await load();
			const large = largeTapeProfile();
			const kept = new Set([
				'FL',
				'FR',
				'FC',
				'SiL',
				'SiR',
				'TpSiL',
				'TpSiR',
				'sub1',
				'seat2',
				'screen',
				'wall:left',
				'wall:right',
				'wall:front',
				'wall:back',
				'floor',
				'ceiling',
			]);
			const ordinary = {
				...large,
				seats: large.seats.filter(({id}) => kept.has(id)),
				channels: large.channels.filter(({id}) => kept.has(id)),
				subs: large.subs.filter(({id}) => kept.has(id)),
				tape: large.tape.filter(
					({from, to}) => kept.has(from) && kept.has(to) && to !== 'ceiling' && to !== 'wall:back',
				),
			};
			const last = ordinary.tape.find(({from, to}) => from === 'FL' && to === 'seat2');
			const wrong = {...last, metres: last.metres + 0.3048};
			const before = {...ordinary, tape: ordinary.tape.filter(one => one !== last)};
			const times = [];
			for (let round = 0; round < rounds(200) + 20; round++) {
				const start = performance.now();
				source.adjustNetwork({...before, tape: [...before.tape, round % 2 ? last : wrong]});
				if (round >= 20) times.push(performance.now() - start);
			}

			return {
				value: quantile(times, 0.99),
				note: `99th percentile, median ${quantile(times, 0.5).toFixed(1)} ms; ${ordinary.tape.length} readings; every second one a foot wrong`,
			};
		},
	},
];
