import {addSource, type BassField, emptySums, type Sums} from './field.ts';
import {type JudgedBass, judgeBass} from './judged.ts';
import {type QuickBass, quickBass, spreadBelow} from './quickBass.ts';
import {plainSetting, type SubSetting, type Turn, turnOf} from './subSetting.ts';

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

/** Mean over the draws of what arrangements are ranked by, dB, all sources of the fields as they are. */
export function plainSpreadDb(fields: readonly BassField[]): number {
	const sums = emptySums(fields[0]!);
	let spreadDb = 0;
	for (const field of fields) {
		fillSums(sums, field, []);
		spreadDb += quickBass(sums, field.receivers).spreadDb / fields.length;
	}

	return spreadDb;
}

/** Sums of all sources but one. */
function fillSums(
	sums: Sums,
	field: BassField,
	turns: ReadonlyArray<Turn | undefined>,
	leftOut?: number,
): void {
	sums.real.fill(0);
	sums.imaginary.fill(0);
	for (let source = 0; source < field.sources; source++)
		if (source !== leftOut) addSource(sums, field, source, turns[source]);
}

/**
Delay, gain and polarity of each sub that make the bass of the seats alike, one sub after the other until nothing
changes: the sub settings of an arrangement in the box's own steps. The first sub stays as it is: only differences count.
A generator: it yields every few milliseconds.

@param fields - One a draw; their sources are the subs, their receivers the seats.
@returns The settings, and the bass judged with them. Never worse than the plain settings over the draws.
*/
export function* bestSubSettings(
	fields: readonly BassField[],
	steps: SettingSteps | undefined,
): Generator<void, {readonly settings: readonly SubSetting[]; readonly judged: JudgedBass}> {
	const plain = Array.from({length: fields[0]!.sources}, () => plainSetting);
	const asTheyAre = {settings: plain, judged: judgeBass(fields, plain)};
	if (!steps || plain.length < 2) return asTheyAre;
	const settings = yield* searchedSettings(fields.slice(0, triedDraws), plain, steps);
	yield;
	const found = {settings, judged: judgeBass(fields, settings)};
	return found.judged.meanDb < asTheyAre.judged.meanDb ? found : asTheyAre;
}

/**
Tries settings of one source while the others play as they do: the spread and the mean level with it; undefined where the
spread would not stay below a limit.
*/
function trying(
	fields: readonly BassField[],
	turns: ReadonlyArray<Turn | undefined>,
	index: number,
): (turn: Turn | undefined, limitDb: number) => QuickBass | undefined {
	const others = fields.map(field => {
		const sums = emptySums(field);
		fillSums(sums, field, turns, index);
		return sums;
	});
	const alone = {...fields[0]!, sources: 1, ...emptySums(fields[0]!)};
	const sums = emptySums(fields[0]!);
	return (turn, limitDb) => {
		let left = limitDb * fields.length;
		for (let d = 0; d < fields.length && alone.receivers > 1; d++) {
			alone.real.fill(0);
			alone.imaginary.fill(0);
			addSource(alone, fields[d]!, index, turn);
			left -= spreadBelow(others[d]!, alone, 0, left) ?? left;
			if (left <= 0) return undefined;
		}

		let spreadDb = 0;
		let outputDb = 0;
		for (const [d, field] of fields.entries()) {
			sums.real.set(others[d]!.real);
			sums.imaginary.set(others[d]!.imaginary);
			addSource(sums, field, index, turn);
			const found = quickBass(sums, field.receivers);
			spreadDb += found.spreadDb / fields.length;
			outputDb += found.outputDb / fields.length;
		}

		return spreadDb < limitDb ? {spreadDb, outputDb} : undefined;
	};
}

function* searchedSettings(
	fields: readonly BassField[],
	plain: readonly SubSetting[],
	steps: SettingSteps,
): Generator<void, readonly SubSetting[]> {
	const {frequenciesHertz} = fields[0]!;
	const settings: SubSetting[] = [...plain];
	const turns: Array<Turn | undefined> = settings.map(() => undefined);
	const start = trying(fields, turns, 0)(undefined, Number.POSITIVE_INFINITY)!;
	let bestDb = start.spreadDb;
	const most = Math.min(usefulDelayMs, steps.mostDelayMs);
	const onStep = (value: number, step: number) => Math.round(value / step) * step;
	for (let round = 0; round < 3; round++) {
		let isBetter = false;
		for (let index = 1; index < settings.length; index++) {
			const spreadWith = trying(fields, turns, index);
			const attempt = (setting: SubSetting) => {
				const turn = turnOf(frequenciesHertz, setting);
				const now = spreadWith(turn, bestDb - 1e-6);
				if (!now || now.outputDb <= start.outputDb - mostLostDb) return;
				settings[index] = setting;
				turns[index] = turn;
				bestDb = now.spreadDb;
				isBetter = true;
			};

			for (const isInverted of steps.canInvert ? [false, true] : [false]) {
				for (let delay = -most; delay <= most; delay += 1)
					attempt({...settings[index]!, isInverted, delayMs: onStep(delay, steps.delayStepMs)});
				yield;
			}

			const leastGainDb = Math.max(usefulGainDb, steps.leastGainDb);
			for (let gain = 0; gain >= leastGainDb; gain -= Math.max(1, steps.gainStepDb))
				attempt({...settings[index]!, gainDb: onStep(gain, steps.gainStepDb)});
			for (const by of [-0.5, -0.2, 0.2, 0.5]) {
				const delay = Math.max(-most, Math.min(most, settings[index]!.delayMs + by));
				attempt({...settings[index]!, delayMs: onStep(delay, steps.delayStepMs)});
			}

			yield;
		}

		if (!isBetter) break;
	}

	return settings;
}
