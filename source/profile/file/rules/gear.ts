import type {Profile} from '../../types.ts';
import {nameRemedy} from '../json/nearest.ts';
import type {Found, Path} from '../json/problem.ts';

/** Ranges the wrong way round, choices out of order, subs on outputs or channels that do not exist. */
export function findGearProblems({receiver, bassProcessor, subs = [], channels}: Profile): Found[] {
	const found: Found[] = [];
	const range = (path: Path, minimum: number, maximum: number, key: string) => {
		if (minimum <= maximum) return;
		found.push({
			path: [...path, key],
			value: minimum,
			expected: `at most the maximum beside it, ${maximum}`,
			remedy: 'Change the two about, or correct one.',
		});
	};

	const ascending = (path: Path, values: readonly number[] = []) => {
		for (const [index, value] of values.entries()) {
			const before = values[index - 1];
			if (before === undefined || before < value) continue;
			const isTwice = before === value;
			found.push({
				path: [...path, index],
				value,
				expected: isTwice ? 'each frequency once' : `more than the ${before} before it`,
				remedy: isTwice ? 'Take one of them out.' : 'Put the frequencies in rising order.',
			});
		}
	};

	if (receiver) {
		const {timing, trim, crossover} = receiver;
		if (timing.kind === 'distance')
			range(['receiver', 'timing'], timing.minimumMetres, timing.maximumMetres, 'minimumMetres');
		else range(['receiver', 'timing'], timing.minimumMs, timing.maximumMs, 'minimumMs');
		range(['receiver', 'trim'], trim.minimumDb, trim.maximumDb, 'minimumDb');
		ascending(['receiver', 'crossover', 'choicesHertz'], crossover.choicesHertz);
		ascending(['receiver', 'crossover', 'lfeLowPassChoicesHertz'], crossover.lfeLowPassChoicesHertz);
	}

	if (bassProcessor) {
		range(
			['bassProcessor', 'delay'],
			bassProcessor.delay.minimumMs,
			bassProcessor.delay.maximumMs,
			'minimumMs',
		);
		range(['bassProcessor', 'gain'], bassProcessor.gain.minimumDb, bassProcessor.gain.maximumDb, 'minimumDb');
		for (const [index, output] of bassProcessor.outputs.entries()) {
			if (bassProcessor.outputs.indexOf(output) === index) continue;
			found.push({
				path: ['bassProcessor', 'outputs', index],
				value: output,
				expected: 'each output once',
				remedy: 'Take one of them out, or correct its name.',
			});
		}
	}

	for (const [index, {processorOutput, fedBy}] of subs.entries()) {
		if (!channels.some(({id}) => id === fedBy)) {
			found.push({
				path: ['subs', index, 'fedBy'],
				value: fedBy,
				expected: 'a channel of this profile',
				remedy: `Add the channel ${fedBy}, or correct what feeds the sub.`,
			});
		}

		if (processorOutput === undefined || bassProcessor?.outputs.includes(processorOutput)) continue;
		found.push({
			path: ['subs', index, 'processorOutput'],
			value: processorOutput,
			expected: 'an output of the bass processor',
			remedy: bassProcessor
				? nameRemedy(processorOutput, bassProcessor.outputs)
				: 'Describe the bass processor, or leave the output out.',
		});
	}

	return found;
}
