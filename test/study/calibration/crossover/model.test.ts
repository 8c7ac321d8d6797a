import {expect, test} from 'vitest';
import {bassManagement} from '../../../../source/profile/ask/bassManagement.ts';
import {throughFilter} from '../../../../source/science/acoustics/filters/analogFilter.ts';
import {filterLevelDb} from '../../../../source/science/acoustics/filters/response.ts';
import {mainsPath, subModel, subPath} from '../../../../source/study/calibration/crossover/model.ts';

test('bassManagement takes the usual filters for those not stated and those that do not exist', () => {
	const usual = {highPass: {kind: 'butterworth', order: 2}, lowPass: {kind: 'linkwitz-riley', order: 4}};
	expect(bassManagement()).toEqual(usual);
	expect(bassManagement({highPass: {kind: 'linkwitz-riley', order: 1}})).toEqual(usual);
	expect(bassManagement({lowPass: {kind: 'butterworth', order: 3}}).lowPass.order).toBe(3);
});

// −3.01 dB for the usual high-pass and −6.02 dB for the usual low-pass at the crossover.
test('mainsPath and subPath are the usual filters at the crossover', () => {
	expect(filterLevelDb(mainsPath(throughFilter, bassManagement(), 80), 80)).toBeCloseTo(-3.0103, 4);
	expect(filterLevelDb(subPath(subModel([]), bassManagement(), 80), 80)).toBeCloseTo(-6.0206, 4);
	expect(filterLevelDb(mainsPath(throughFilter, bassManagement(), 'full'), 20)).toBe(0);
});

test('subModel ends at the lowest upper limit and takes the usual low end for an unknown one', () => {
	const {high, low} = subModel([{upperLimitHertz: 200}, {upperLimitHertz: 150}]);
	expect(filterLevelDb(high, 150)).toBeCloseTo(-3.0103, 4);
	expect(filterLevelDb(low, 30)).toBeCloseTo(-3.0103, 4);
	expect(filterLevelDb(subModel([{lowLimitHertz: 22}]).low, 22)).toBeCloseTo(-3.0103, 4);
});
