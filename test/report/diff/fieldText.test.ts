import {expect, test} from 'vitest';
import {fieldText} from '../../../source/report/diff/fieldText.ts';

test.each([
	[{path: 'speaker.lowLimitHertz', before: 55, after: 40}, 'low limit 55 Hz → 40 Hz'],
	[{path: 'trim.minimumDb', before: -12, after: -10}, 'trim minimum −12 dB → −10 dB'],
	[{path: 'widthMetres', before: 4.1, after: 4.12}, 'width 4.10 m → 4.12 m'],
	[{path: 'latencyMs', before: undefined, after: 4}, 'latency not stated → 4 ms'],
	[
		{path: 'timing.speedOfSoundMetresPerSecond', before: 343, after: 340},
		'timing speed of sound 343 m/s → 340 m/s',
	],
	[{path: 'invertsSubs', before: false, after: true}, 'inverts subs no → yes'],
	[{path: 'crossover.choicesHertz', before: [60, 80], after: [80]}, 'crossover choices 60, 80 Hz → 80 Hz'],
	[{path: 'cables', before: {a: 1}, after: {a: 2}}, 'cables described anew'],
	[{path: 'wiring', before: undefined, after: {a: 2}}, 'wiring described for the first time'],
	[
		{path: 'ceiling.heightsMetres', before: [2.6, 1.9], after: [1.9, 2.6]},
		'ceiling heights 2.60 m, 1.90 m → 1.90 m, 2.60 m',
	],
])('`fieldText` reads the unit off the key of %j', (field, text) => {
	expect(fieldText(field, 'm')).toBe(text);
});
