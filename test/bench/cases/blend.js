// The fit runs after each tone reading, before the next question is drawn.
import {withTones} from '../fixtures/bassProfile.js';
import {loadSource} from '../tools.js';

/** Levels of an invented room; the speaker's and the sub's filters do not matter to the time. */
function trueLevel(ids, hertz, addedMs) {
	if (ids.length === 1) return ids[0] === 'FC' ? 74 : 75;
	const cosine = Math.cos((2 * Math.PI * hertz * (1.3 + addedMs)) / 1000);
	return 10 * Math.log10(10 ** 7.4 + 10 ** 7.5 + 2 * 10 ** 7.45 * cosine);
}

export default {
	name: 'Blend, 18 tone readings to the settings',
	goal: {most: 50, unit: 'ms'},
	async run({rounds, quantile}) {
		const {blend} = await loadSource('source/study/calibration/blend/blend.ts');
		const profile = withTones(trueLevel);
		const times = [];
		for (let round = 0; round < rounds(40) + 5; round++) {
			// A new object each time, so that nothing is looked up that was computed for the last one.
			const fresh = structuredClone(profile);
			const start = performance.now();
			const {pairs} = blend(fresh);
			const time = performance.now() - start;
			if (pairs[0].minima.length === 0) throw new Error('expected an answer, got none');
			if (round >= 5) times.push(time);
		}

		return {
			value: quantile(times, 0.95),
			note: `95th percentile of ${times.length}; median ${quantile(times, 0.5).toPrecision(3)} ms`,
		};
	},
};
