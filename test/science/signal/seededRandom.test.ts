import {expect, test} from 'vitest';
import {seededRandom} from '../../../source/science/signal/seededRandom.ts';

// Park & Miller (1988): from seed 1 the 10 000th state is 1043618065.
test('seededRandom passes the published check of its generator', () => {
	const random = seededRandom(1);
	let value = 0;
	for (let count = 0; count < 10_000; count += 1) value = random();
	expect(Math.round(value * 2147483647)).toBe(1043618065);
});

test('seededRandom takes seeds that the generator itself could not', () => {
	for (const seed of [0, 2147483647, -5, 3.7]) {
		const value = seededRandom(seed)();
		expect(value).toBeGreaterThan(0);
		expect(value).toBeLessThan(1);
	}
});
