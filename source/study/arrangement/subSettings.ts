import {type BassField, plainSetting, quickBass, type SubSetting, turnOf} from './field.ts';
import {type JudgedBass, judgeBass} from './judged.ts';

/** What the box before the subs can take. */
export type SettingSteps = {
	readonly delayStepMs: number;
	readonly mostDelayMs: number;
	readonly gainStepDb: number;
	readonly leastGainDb: number;
	readonly canInvert: boolean;
};

/** Beyond this a sub's delay is heard as an echo of the others in the bass's own time, ms. Judgement, no source. */
const usefulDelayMs = 12;
/** A sub turned down further than this is as good as not there, dB. */
const usefulGainDb = -8;
/** Seats that are alike because little is heard are no gain: output that settings may cost, dB. Judgement, no source. */
const mostLostDb = 2;

/**
Delay, gain and polarity of each sub that make the bass of the seats alike, one sub after the other until nothing
changes: the sub settings of an arrangement in the box's own steps. The first sub stays as it is: only differences count.

@returns The settings, and the bass judged with them. Never worse than the plain settings over the draws.
*/
export function bestSubSettings(
	fields: readonly BassField[],
	picked: readonly number[],
	receivers: readonly number[],
	steps: SettingSteps | undefined,
): {readonly settings: readonly SubSetting[]; readonly judged: JudgedBass} {
	const plain = picked.map(() => plainSetting);
	if (!steps || picked.length < 2)
		return {settings: plain, judged: judgeBass(fields, picked, plain, receivers)};
	const {frequenciesHertz} = fields[0]!;
	const settings: SubSetting[] = [...plain];
	const turns = settings.map(setting => turnOf(frequenciesHertz, setting));
	const measured = () => {
		let spreadDb = 0;
		let outputDb = 0;
		for (const field of fields) {
			const found = quickBass(field, picked, receivers, turns);
			spreadDb += found.spreadDb / fields.length;
			outputDb += found.outputDb / fields.length;
		}

		return {spreadDb, outputDb};
	};
	const start = measured();
	let bestDb = start.spreadDb;
	const attempt = (index: number, setting: SubSetting): boolean => {
		const before = turns[index]!;
		turns[index] = turnOf(frequenciesHertz, setting);
		const tried = measured();
		if (tried.spreadDb < bestDb - 1e-6 && tried.outputDb > start.outputDb - mostLostDb) {
			settings[index] = setting;
			bestDb = tried.spreadDb;
			return true;
		}

		turns[index] = before;
		return false;
	};
	const most = Math.min(usefulDelayMs, steps.mostDelayMs);
	const onStep = (value: number, step: number) => Math.round(value / step) * step;
	for (let round = 0; round < 3; round++) {
		let isBetter = false;
		for (let index = 1; index < picked.length; index++) {
			for (const isInverted of steps.canInvert ? [false, true] : [false]) {
				for (let delay = -most; delay <= most; delay += 1)
					isBetter =
						attempt(index, {...settings[index]!, isInverted, delayMs: onStep(delay, steps.delayStepMs)}) ||
						isBetter;
			}

			for (
				let gain = 0;
				gain >= Math.max(usefulGainDb, steps.leastGainDb);
				gain -= Math.max(1, steps.gainStepDb)
			)
				isBetter = attempt(index, {...settings[index]!, gainDb: onStep(gain, steps.gainStepDb)}) || isBetter;
			for (const by of [-0.5, -0.2, 0.2, 0.5])
				isBetter =
					attempt(index, {
						...settings[index]!,
						delayMs: onStep(settings[index]!.delayMs + by, steps.delayStepMs),
					}) || isBetter;
		}

		if (!isBetter) break;
	}

	return {settings, judged: judgeBass(fields, picked, settings, receivers)};
}
