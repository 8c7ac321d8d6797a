// Moving the crossover list or a speaker's limit in the walk re-ranks everything: it must fit into one frame.
import {twelveSpeakers} from '../fixtures/bassProfile.js';
import {loadSource} from '../tools.js';

export default {
	name: 'Crossover ranking, 12 speakers × 10 choices',
	goal: {most: 16, unit: 'ms'},
	async run({rounds, quantile}) {
		const {suggestCrossovers} = await loadSource('source/study/calibration/crossover/suggest.ts');
		const times = [];
		// The first calls meet code that is not compiled yet, as in a walk that has just begun; they are left out.
		for (let round = 0; round < rounds(60) + 10; round++) {
			const fresh = structuredClone(twelveSpeakers);
			const start = performance.now();
			const {channels} = suggestCrossovers(fresh);
			const time = performance.now() - start;
			if (channels.size !== 12) throw new Error(`expected 12 channels, got ${channels.size}`);
			if (round >= 10) times.push(time);
		}

		return {
			value: quantile(times, 0.95),
			note: `95th percentile of ${times.length}; median ${quantile(times, 0.5).toPrecision(3)} ms`,
		};
	},
};
