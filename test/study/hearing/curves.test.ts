import fc from 'fast-check';
import {expect, test} from 'vitest';
import {curveDistanceDb, curveFigures, smoothedCurve} from '../../../source/study/hearing/curveFigures.ts';
import {curveFromText, curveLevelAt} from '../../../source/study/hearing/curveText.ts';

test.each([
	['tabs and points', '20\t-3.5\n40\t-1\n80\t0\n'],
	['blanks, with a heading and comments', '* made by hand\nFreq SPL\n 20  -3.5\n 40  -1.0\n 80   0.0 \n'],
	['semicolons and decimal commas', '20,0;-3,5\r\n40,0;-1,0\r\n80,0;0,0\r\n'],
	['commas', 'Hz,dB\n20,-3.5\n40,-1\n80,0'],
	['blanks and decimal commas', '20,0 -3,5\n40,0 -1,0\n80,0 0,0'],
	['a byte-order mark and true minus signs', '\uFEFF20 −3.5\n40 −1\n80 0'],
	['the highest first, one twice', '80 0\n40 -1\n20 9\n20 -3.5\n'],
])('curveFromText reads %s', (_, text) => {
	const curve = curveFromText(text)!;
	expect([...curve.frequenciesHz]).toEqual([20, 40, 80]);
	expect([...curve.levelsDb]).toEqual([-3.5, -1, 0]);
	expect(curve).not.toHaveProperty('phasesDegrees');
});

test('a third column is the phase, where every line has it', () => {
	expect([...curveFromText('20 1 90\n40 2 45\n80 3 0')!.phasesDegrees!]).toEqual([90, 45, 0]);
	expect(curveFromText('20 1 90\n40 2\n80 3 0')).not.toHaveProperty('phasesDegrees');
});

test.each([
	['nothing', ''],
	['prose', 'Dear reader,\nthis is no curve.\nNot at all.'],
	['two lines only', '20 0\n40 0'],
	['negative frequencies', '-20 0\n-40 0\n-80 0'],
	['levels beyond any sense', '20 5000\n40 5000\n80 5000'],
])('curveFromText finds nothing usable in %s', (_, text) => {
	expect(curveFromText(text)).toBeUndefined();
});

test('no text makes curveFromText throw or give what is not finite', () => {
	fc.assert(
		fc.property(
			fc.array(
				fc.oneof(
					fc.string(),
					fc.tuple(fc.double(), fc.double()).map(pair => pair.join('\t')),
				),
			),
			lines => {
				const curve = curveFromText(lines.join('\n'));
				for (const value of [...(curve?.frequenciesHz ?? []), ...(curve?.levelsDb ?? [])])
					expect(Number.isFinite(value)).toBe(true);
			},
		),
	);
});

test('a level between two points lies on the line over log f, and the ends hold on', () => {
	const curve = curveFromText('100 0\n400 6\n1600 12')!;
	expect(curveLevelAt(curve, 200)).toBeCloseTo(3, 9);
	expect(curveLevelAt(curve, 800)).toBeCloseTo(9, 9);
	expect(curveLevelAt(curve, 10)).toBe(0);
	expect(curveLevelAt(curve, 9999)).toBe(12);
});

const frequenciesHz = Float64Array.from({length: 500}, (_, index) => 15 * 2 ** (index / 48));
const made = (levelOf: (hertz: number) => number) => ({frequenciesHz, levelsDb: frequenciesHz.map(levelOf)});

test('figures name the dip, and the rest only where the microphone is known', () => {
	// A dip of 12 dB, a third of an octave wide at its half, at 63 Hz; the room falls by 1 dB an octave; bass ends at 30 Hz.
	const curve = made(hertz => {
		const dip = -12 * Math.exp(-((Math.log2(hertz / 63) / 0.2) ** 2));
		const end = hertz < 30 ? -24 * Math.log2(30 / hertz) : 0;
		return dip + end - Math.log2(hertz / 1000);
	});
	const unknown = curveFigures(curve, false);
	expect(unknown).not.toHaveProperty('tiltDbPerOctave');
	expect(unknown).not.toHaveProperty('deviationDb');
	expect(unknown).not.toHaveProperty('lowLimitHertz');
	expect(unknown.dips.some(({hertz}) => Math.abs(hertz - 63) < 3)).toBe(true);
	const known = curveFigures(curve, true);
	expect(known.tiltDbPerOctave).toBeCloseTo(-1, 1);
	expect(known.lowLimitHertz).toBeGreaterThan(15);
	expect(known.lowLimitHertz).toBeLessThan(32);
});

test('the distance of a curve from itself at another level is 0, from a wavy one its mean size', () => {
	const flat = made(() => 0);
	expect(
		curveDistanceDb(
			flat,
			made(() => 7),
			[20, 200],
		),
	).toBeCloseTo(0, 9);
	// A sine over log f of 3 dB has a mean size of 2/π · 3 dB.
	const wavy = made(hertz => 3 * Math.sin(2 * Math.PI * 6 * Math.log2(hertz)));
	expect(curveDistanceDb(flat, wavy, [20, 200])).toBeCloseTo((3 * 2) / Math.PI, 0);
	expect(smoothedCurve(flat, 3).levelsDb.every(level => Math.abs(level) < 1e-9)).toBe(true);
});
