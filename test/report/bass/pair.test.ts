import {expect, test} from 'vitest';
import type {Profile} from '../../../source/profile/types.ts';
import {blendText} from '../../../source/report/bass/blend.ts';
import {subsPairText} from '../../../source/report/bass/pair.ts';
import {cellWidth} from '../../../source/report/fitCells.ts';
import {blend} from '../../../source/study/calibration/blend/blend.ts';
import {blendInputs} from '../../afresh.ts';
import {apart, dialledIn, profileWith, walkedPair} from '../../study/calibration/blend/pairRoom.ts';

const start = dialledIn(profileWith(), 'distances');
const textOf = (profile: Profile, width = 80) => subsPairText(profile, blend(blendInputs(profile)), width);
const joined = (text: string) => text.replaceAll(/\s+/g, ' ');
/** With what is read after the change that much softer. */
const walked = (softerDb = 0) =>
	walkedPair(start, apart, (subject, {part}) => {
		const meter = subject.meter!;
		const last = meter.at(-1)!;
		return part === 'pair after'
			? {...subject, meter: meter.with(-1, {...last, decibels: last.decibels - softerDb})}
			: subject;
	});

test('before the first reading it says what it takes, warns, and lists the tones with what to turn', () => {
	const text = textOf(start);
	expect(joined(text)).toMatch(/24 readings, 4 changes at a box, about \d+ min/);
	expect(text).toMatch(/Next: 12 readings at Sofa/);
	expect(text.indexOf('master volume down')).toBeLessThan(text.indexOf(' 1. As it stands'));
	expect(joined(text)).toContain('Bass processor, output B: delay from 0.0 ms to 5.6 ms');
	expect(joined(text)).toContain('32 Hz, 40 Hz, 50 Hz, 63 Hz into Low frequency effects 1');
});

test('what was kept is told with what each noise gained, and that it comes before the fronts', () => {
	const text = joined(textOf(walked()));
	expect(text).toMatch(
		/Kept between the subs: Sub \d \d\.\d ms later and turned \(\+\d\.\d dB through the LFE channel, .*with all fronts, .*Front centre alone\)\. Dial it in before/,
	);
});

test('what was put back lists the old entries', () => {
	const text = joined(textOf(walked(12)));
	expect(text).toMatch(/Tried between the subs and put back \(−\d+\.\d dB through the LFE channel/);
	expect(text).toMatch(/Type the old entries in again: > bass processor, output A: delay 3\.0 ms/);
	expect(text).toContain('output A: polarity as before');
});

test('blend offers it before the fronts are read, and then says how far it is', () => {
	const offered = joined(blendText(start, blend(blendInputs(start)), 80));
	expect(offered).toMatch(/Before them, --pair: Two subs against each other, an extra .*24 readings/);
	const kept = walked();
	expect(joined(blendText(kept, blend(blendInputs(kept)), 80))).toMatch(
		/Kept between the subs.*does not stand in the boxes yet\. Dial it in first/,
	);
});

test.each([60, 120])('it keeps to %i columns', width => {
	for (const profile of [start, walked(), walked(12)])
		for (const line of textOf(profile, width).split('\n')) expect(cellWidth(line)).toBeLessThanOrEqual(width);
});
