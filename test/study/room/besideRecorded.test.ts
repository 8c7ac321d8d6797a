import {expect, test} from 'vitest';
import {besideRecorded} from '../../../source/study/room/besideRecorded.ts';
import {octaveFractionGrid} from '../../../source/study/room/frequencies.ts';

const frequenciesHertz = octaveFractionGrid(15, 200, 24);
const computed = frequenciesHertz.map(hertz => 6 * Math.sin(hertz / 9));
const figures = {spreadDb: 0, flatnessDb: 0, hole: {frequencyHertz: 40, depthDb: 0}, outputDb: 0};
const study = {frequenciesHertz, together: {seatsDb: [computed], figures}};
const fine = octaveFractionGrid(10, 300, 48);

test('a recording that differs by its level alone lies at no distance', () => {
	const levelsDb = fine.map(hertz => 6 * Math.sin(hertz / 9) - 31);
	const [found] = besideRecorded(study, ['sofa'], [{seat: 'sofa', frequenciesHertz: fine, levelsDb}]);
	// What is lost between the points of 48 to an octave.
	expect(found!.facts).toMatchObject({fromHertz: expect.any(Number)});
	expect((found!.facts as {distanceDb: number}).distanceDb).toBeLessThan(0.05);
});

test('a difference of ± 3 dB, one half each, is 3 dB', () => {
	const inBand = frequenciesHertz.filter(hertz => hertz >= 20 && hertz <= 120);
	const middle = inBand[Math.floor(inBand.length / 2)]!;
	const levelsDb = frequenciesHertz.map((hertz, f) => computed[f]! + (hertz < middle ? 3 : -3));
	const [found] = besideRecorded(study, ['sofa'], [{seat: 'sofa', frequenciesHertz, levelsDb}]);
	expect((found!.facts as {distanceDb: number}).distanceDb).toBeCloseTo(3, 1);
});

test('a seat without a recording, or one that shares too little with the model, is left out', () => {
	expect(besideRecorded(study, ['sofa'], [])).toEqual([]);
	const narrow = {seat: 'sofa', frequenciesHertz: [100, 101], levelsDb: [0, 0]};
	expect(besideRecorded(study, ['sofa'], [narrow])).toEqual([]);
	expect(besideRecorded(study, ['chair'], [{...narrow, frequenciesHertz: fine, levelsDb: fine}])).toEqual([]);
});
