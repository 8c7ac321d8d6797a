import fc from 'fast-check';
import {expect, test} from 'vitest';
import {control, onGrid, receiverSpeed, timingControl} from '../../../source/profile/ask/boxes.ts';
import {sampleProfile} from '../sample.ts';

const {receiver} = sampleProfile();

test('control ends at the last whole step within the range, and holds one point where the limits are the wrong way round', () => {
	expect(control(0.5, -12, 12.3)).toEqual({step: 0.5, minimum: -12, maximum: 12});
	expect(control(0.1, 0, 50).maximum).toBeCloseTo(50, 9);
	expect(control(1, 5, 3)).toEqual({step: 1, minimum: 5, maximum: 5});
});

test('onGrid gives a point of the control for every value', () => {
	fc.assert(
		fc.property(
			fc.double({min: 0.001, max: 1, noNaN: true}),
			fc.double({min: -20, max: 0, noNaN: true}),
			fc.integer({min: 0, max: 500}),
			(step, minimum, count) => {
				const point = onGrid({step, minimum, maximum: 1000}, minimum + (count + 0.3) * step);
				// Twelve digits are kept: half a unit of the last one, at most 500, is 5e-10.
				expect(Math.abs(point - (minimum + count * step))).toBeLessThan(1e-9);
			},
		),
	);
});

test('a distance entered is sound sent earlier by that distance at the receiver’s own speed', () => {
	// First principles: t = d / c. 3.43 m at 343 m/s is 10 ms.
	const timing = {
		kind: 'distance',
		shownIn: 'm',
		stepMetres: 0.01,
		minimumMetres: 0,
		maximumMetres: 18,
	} as const;
	const {kind, delay, toEntry, entryPerMs} = timingControl({...receiver!, timing});
	expect(kind).toBe('distance');
	expect(toEntry(-10)).toBeCloseTo(3.43, 9);
	expect(entryPerMs).toBeCloseTo(0.343, 12);
	expect(delay.minimum).toBeCloseTo(-18 / 0.343, 9);
	expect(delay.maximum).toBeCloseTo(0, 12);
	expect(delay.step).toBeCloseTo(0.01 / 0.343, 12);
});

test('receiverSpeed is the receiver’s constant, else 343 m/s', () => {
	const timing = receiver!.timing as Extract<typeof receiver, object>['timing'] & {kind: 'distance'};
	expect(receiverSpeed({...receiver!, timing: {...timing, speedOfSoundMetresPerSecond: 340}})).toBe(340);
	expect(receiverSpeed(receiver)).toBe(343);
	expect(receiverSpeed(undefined)).toBe(343);
});
