import {expect, test} from 'vitest';
import {bassManagement} from '../../../source/profile/ask/bassManagement.ts';
import {rankingText} from '../../../source/report/bass/crossover.ts';
import {headroomText} from '../../../source/report/bass/headroom.ts';
import {cellWidth} from '../../../source/report/fitCells.ts';
import {crossoverCurves} from '../../../source/study/calibration/crossover/curve.ts';
import {subModel} from '../../../source/study/calibration/crossover/model.ts';
import {suggestCrossovers} from '../../../source/study/calibration/crossover/suggest.ts';
import {headroom} from '../../afresh.ts';
import {roomProfile} from '../../study/calibration/blend/room.ts';

const profile = {
	...roomProfile({
		crossoverHertz: 80,
		mainsLimitHertz: 80,
		subLimitHertz: 25,
		arrivalMs: {FC: 8, sub1: 9},
		levelDb: () => 75,
	}),
	channels: [
		{id: 'FL' as const, speaker: {lowLimitHertz: 50, box: 'vented' as const, sensitivityDb: 88}},
		{id: 'FR' as const, speaker: {lowLimitHertz: 50, box: 'vented' as const, sensitivityDb: 88}},
		{id: 'FC' as const, speaker: {lowLimitHertz: 90}},
		{id: 'LFE1' as const},
	],
};

test('crossoverText puts speakers of one kind together, with reasons, ranking and curve', () => {
	const suggestion = suggestCrossovers(profile);
	const {hertz, ranking} = suggestion.channels.get('FL')!;
	const curves = new Map([
		[
			'FL',
			crossoverCurves(
				profile.channels[0]!.speaker!,
				subModel(profile.subs!),
				bassManagement(profile.receiver!.crossover),
				hertz as number,
				ranking[0]!.subDelayMs,
				ranking[0]!.inverted,
			),
		],
	]);
	const text = rankingText(profile, suggestion, {width: 80, curves});
	expect(text).toMatch(/^Front left and Front right: 80 Hz$/m);
	expect(text).toMatch(/^Front centre: 100 Hz$/m);
	expect(text).toMatch(/choice +cost +ripple/);
	expect(text).toMatch(/a .* speaker .*b .* sub .*c .* sum/);
	for (const line of text.split('\n').slice(1)) expect(cellWidth(line)).toBeLessThanOrEqual(80);
});

test('headroomText says what is missing instead of a level', () => {
	const text = headroomText(profile, headroom(profile), 100);
	expect(text).toMatch(/Front left +Sofa +105 dB +missing: amplifier power, impedance/);
	expect(text).toMatch(/Problems/);
});
