import {
	addSource,
	type BassField,
	emptySums,
	plainSetting,
	quickBass,
	type SubSetting,
	type Turn,
	turnOf,
} from './field.ts';
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
/** Draws in which settings are tried; what is found is judged in all. */
const triedDraws = 8;

const everySource = ({sources}: BassField) => Array.from({length: sources}, (_, i) => i);
const everyReceiver = ({receivers}: BassField) => Array.from({length: receivers}, (_, i) => i);

/** Mean over the draws of what arrangements are ranked by, dB, all sources of the fields as they are. */
export function plainSpreadDb(fields: readonly BassField[]): number {
	return spreadWith(fields, []).spreadDb;
}

/** The same with what settings do to each source, and the mean level. */
function spreadWith(
	fields: readonly BassField[],
	turns: readonly Turn[],
): {spreadDb: number; outputDb: number} {
	const sums = emptySums(fields[0]!);
	let spreadDb = 0;
	let outputDb = 0;
	for (const field of fields) {
		sums.real.fill(0);
		sums.imaginary.fill(0);
		for (let source = 0; source < field.sources; source++) addSource(sums, field, source, turns[source]);
		const found = quickBass(sums, field.receivers);
		spreadDb += found.spreadDb / fields.length;
		outputDb += found.outputDb / fields.length;
	}

	return {spreadDb, outputDb};
}

/**
Delay, gain and polarity of each sub that make the bass of the seats alike, one sub after the other until nothing
changes: the sub settings of an arrangement in the box's own steps. The first sub stays as it is: only differences count.

@param fields - One a draw; their sources are the subs, their receivers the seats.
@returns The settings, and the bass judged with them. Never worse than the plain settings over the draws.
*/
export function bestSubSettings(
	fields: readonly BassField[],
	steps: SettingSteps | undefined,
): {readonly settings: readonly SubSetting[]; readonly judged: JudgedBass} {
	const subs = everySource(fields[0]!);
	const judged = (settings: readonly SubSetting[]) =>
		judgeBass(fields, subs, settings, everyReceiver(fields[0]!));
	const plain = subs.map(() => plainSetting);
	const asTheyAre = {settings: plain, judged: judged(plain)};
	if (!steps || subs.length < 2) return asTheyAre;
	const settings = searchedSettings(fields.slice(0, triedDraws), plain, steps);
	const found = {settings, judged: judged(settings)};
	return found.judged.meanDb < asTheyAre.judged.meanDb ? found : asTheyAre;
}

function searchedSettings(
	fields: readonly BassField[],
	plain: readonly SubSetting[],
	steps: SettingSteps,
): readonly SubSetting[] {
	const {frequenciesHertz} = fields[0]!;
	const settings: SubSetting[] = [...plain];
	const turns = settings.map(setting => turnOf(frequenciesHertz, setting));
	const start = spreadWith(fields, turns);
	let bestDb = start.spreadDb;
	const attempt = (index: number, setting: SubSetting): boolean => {
		const before = turns[index]!;
		turns[index] = turnOf(frequenciesHertz, setting);
		const now = spreadWith(fields, turns);
		if (now.spreadDb < bestDb - 1e-6 && now.outputDb > start.outputDb - mostLostDb) {
			settings[index] = setting;
			bestDb = now.spreadDb;
			return true;
		}

		turns[index] = before;
		return false;
	};
	const most = Math.min(usefulDelayMs, steps.mostDelayMs);
	const onStep = (value: number, step: number) => Math.round(value / step) * step;
	for (let round = 0; round < 3; round++) {
		let isBetter = false;
		for (let index = 1; index < settings.length; index++) {
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
						delayMs: onStep(
							Math.max(-most, Math.min(most, settings[index]!.delayMs + by)),
							steps.delayStepMs,
						),
					}) || isBetter;
		}

		if (!isBetter) break;
	}

	return settings;
}
