import {expect, test} from 'vitest';
import {sentenceOf} from '../../../source/report/said/said.ts';
import {sayIn} from '../../../source/report/said/say.ts';
import {assembleSheet} from '../../../source/report/sheet/assemble.ts';
import {input, profile, solution} from './scenario.ts';

test('the kept settings are printed in the receiver’s own unit and step, in the order of the channels', () => {
	const {receiver, processor, timingHeading, origin} = assembleSheet(input());
	expect(timingHeading).toBe('Distance to enter');
	// 0.9144 m = 3.0 ft, 3.048 m = 10.0 ft, 6.096 m = 20.0 ft, exactly.
	expect(
		receiver.map(({name, timing, trim, crossover, polarity}) => [name, timing, trim, crossover, polarity]),
	).toEqual([
		['Front left', '3.0 ft', '−1.5', '80 Hz', ''],
		['Front right', '10.0 ft', '+2.0', 'full range', 'inverted'],
		['Low frequency effects 1', '20.0 ft', '0.0', '', ''],
	]);
	expect(processor).toEqual([
		{name: 'A: Front sub', crossover: '', timing: '3.2 ms', trim: '−2.0', polarity: ''},
	]);
	expect(origin).toContain('2026-03-02');
});

test('places are told from the nearer wall', () => {
	const {places} = assembleSheet(input());
	expect(places.find(({name}) => name === 'Front right')).toMatchObject({
		acrossFrom: 'right 0.80 m',
		alongFrom: 'screen 0.40 m',
		height: '1.00 m',
	});
	expect(places.find(({name}) => name === 'Sofa | middle')?.alongFrom).toBe('back 1.00 m');
	expect(places.find(({name}) => name === 'Front left')?.toSeat).toBe('3.80 m');
	// Nothing is known of the sub's place, so nothing is said of it.
	expect(places.some(({name}) => name === 'Front sub')).toBe(false);
});

test('the heading says delay where the rows are delays', () => {
	const timing = {kind: 'delay', exact: 1, stepped: 1, sigma: 0.1} as const;
	const channels = [{...solution.channels[0]!, timing}];
	expect(assembleSheet(input({set: undefined, solution: {...solution, channels}})).timingHeading).toBe(
		'Delay',
	);
});

test('stale settings carry a warning, fresh ones do not', () => {
	expect(assembleSheet(input()).warnings).toEqual([]);
	expect(assembleSheet(input({isStale: true})).warnings[0]).toContain('before the latest readings');
});

test('without a kept set the computed settings are printed, with what is missing and the master volume', () => {
	const content = assembleSheet(input({set: undefined}));
	expect(content.origin).toContain('not yet kept');
	expect(content.warnings).toEqual([sentenceOf(solution.remarks[0]!, sayIn(profile))]);
	expect(content.receiver.map(({name}) => name)).toEqual(['Front left']);
	// A change, never as if it were a value.
	expect(content.afterDialling.join()).toContain('turn it down by 3.0 dB');
});

test('the page always carries cautions for ears, mains and ladders', () => {
	const text = assembleSheet(input()).cautions.join(' ');
	for (const word of ['Ears', 'electrician', 'ladder']) expect(text).toContain(word);
});

test('cables are printed where they are entered; mere proposals without a length are not', () => {
	// 6 m and a tenth of slack.
	expect(assembleSheet(input()).cables).toEqual([
		{label: 'left | front', from: 'receiver/FL', to: 'FL/speaker', length: '6.60 m', conductor: '14 AWG'},
	]);
});

test('the page knows the plan: what stands against it, and what is not read there yet', () => {
	const {planned} = assembleSheet(
		input({
			carried: {
				standing: [
					{
						id: 'FL',
						plannedAt: [0.8, 0.4, 1],
						at: [0.83, 0.44, 1],
						rightMetres: 0.03,
						backMetres: 0.04,
						offMetres: 0.05,
						isGoodEnough: true,
					},
				],
				open: [{id: 'FR', at: [1, 0.4, 1]}],
			},
		}),
	);
	expect(planned).toHaveLength(2);
	expect(planned[0]).toMatch(
		/^Front left: planned 0\.80 m from the left wall.*stands 0\.05 m off, good enough$/,
	);
	expect(planned[1]).toMatch(/^Front right: planned .* 0\.40 m from the screen wall; not read there yet$/);
	expect(assembleSheet(input()).planned).toEqual([]);
});
