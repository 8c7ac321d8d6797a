import fc from 'fast-check';
import {expect, test} from 'vitest';
import {control} from '../../../source/profile/ask/boxes.ts';
import {type Feed, type SteppedLine, shareAndRound} from '../../../source/study/calibration/steps.ts';

const receiver = control(0.5, -12, 12);
const processor = control(0.1, 0, 50);

/** Largest difference between the errors of any two lines: only differences are heard. */
const spread = (errors: ReadonlyMap<string, number>) =>
	Math.max(...errors.values()) - Math.min(...errors.values());

test('lines alone are rounded to steps of the receiver, with no two further apart than half a step each makes', () => {
	const exact = fc.array(fc.double({min: -8, max: 8, noNaN: true}), {minLength: 2, maxLength: 8});
	fc.assert(
		fc.property(exact, values => {
			const lines: SteppedLine[] = values.map((value, index) => ({
				id: `${index}`,
				exact: value,
				control: receiver,
			}));
			const {receiver: shared, errors} = shareAndRound(lines, [], 'cut', 1e-6);
			for (const {stepped} of shared.values())
				expect(Math.abs(stepped * 2 - Math.round(stepped * 2))).toBeLessThan(1e-9);
			// Each to its nearest step would leave half a step either way; the joint choice never more.
			expect(spread(errors)).toBeLessThanOrEqual(0.5 + 1e-9);
		}),
	);
});

test('what the receiver does to a feed and the processor to its outputs add up to what each sub needs', () => {
	const feed: Feed = {
		id: 'LFE1',
		control: control(0.1, 0, 30),
		branches: [
			{output: 'A', exact: 12.3, control: processor},
			{output: 'B', exact: 15.7, control: processor},
		],
	};
	const lines: SteppedLine[] = [{id: 'FL', exact: 4, control: control(0.1, 0, 30)}];
	const {receiver: shared, outputs, errors} = shareAndRound(lines, [feed], 'least', 1e-9);
	const common = shared.get('LFE1')!.stepped;
	const offset = shared.get('FL')!.stepped - 4;
	expect(common + outputs.get('A')!.stepped - 12.3).toBeCloseTo(offset, 6);
	expect(common + outputs.get('B')!.stepped - 15.7).toBeCloseTo(offset, 6);
	expect(spread(errors)).toBeLessThan(1e-6);
	// Delays rest at nothing: the receiver carries what both need.
	expect(Math.min(outputs.get('A')!.stepped, outputs.get('B')!.stepped)).toBeCloseTo(0, 6);
});

test('a need beyond both boxes is met as far as they go, and the error says by how much it is not', () => {
	const lines: SteppedLine[] = [
		{id: 'FL', exact: 0, control: receiver},
		{id: 'FR', exact: 40, control: receiver},
	];
	const {receiver: shared, errors} = shareAndRound(lines, [], 'cut', 1e-6);
	for (const {stepped} of shared.values()) expect(Math.abs(stepped)).toBeLessThanOrEqual(12);
	// 40 dB apart, 24 dB of range: 16 dB are lost, whatever is chosen.
	expect(spread(errors)).toBeCloseTo(16, 6);
});
