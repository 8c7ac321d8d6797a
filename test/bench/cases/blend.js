// The blend is computed after each reading, before the next question is drawn.
import {withTones} from '../fixtures/bassProfile.js';
import {loadSource} from '../tools.js';

/** Levels of an invented room; the speaker's and the sub's filters do not matter to the time. */
function trueLevel(hertz, addedMs) {
	const cosine = Math.cos((2 * Math.PI * hertz * (1.3 + addedMs)) / 1000);
	return 10 * Math.log10(10 ** 7.4 + 10 ** 7.5 + 2 * 10 ** 7.45 * cosine);
}

export default {
	name: 'Blend, 27 tone readings to the setting',
	goal: {most: 50, unit: 'ms'},
	async run({rounds, quantile}) {
		const {blend} = await loadSource('source/study/calibration/blend/blend.ts');
		const {blendInputs} = await loadSource('source/study/calibration/blend/blendInputs.ts');
		const {costlyPartsOf} = await loadSource('source/commands/costlyParts.ts');
		const profile = withTones(trueLevel);
		const times = [];
		for (let round = 0; round < rounds(40) + 5; round++) {
			const start = performance.now();
			const {status} = blend(blendInputs(profile, costlyPartsOf(profile)));
			const time = performance.now() - start;
			if (status !== 'to try' && status !== 'stands') throw new Error(`expected an answer, got ${status}`);
			if (round >= 5) times.push(time);
		}

		return {
			value: quantile(times, 0.95),
			note: `95th percentile of ${times.length}; median ${quantile(times, 0.5).toPrecision(3)} ms`,
		};
	},
};
