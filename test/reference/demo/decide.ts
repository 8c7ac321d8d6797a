import type {ChannelId, MeterReading, SettingsSet, TapeReading} from '../../../source/profile/types.ts';
import {bandWeightingDb, mainsBandHertz, subBandHertz} from './levels.ts';
import {receiverSpeedOfSound} from './meter.ts';
import type {Truth} from './truth.ts';

const distanceStep = 0.05;
const targetDb = 75;

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const rounded = (value: number, step: number) => Number((Math.round(value / step) * step).toFixed(3));

const crossovers: Readonly<Partial<Record<ChannelId, number>>> = {
	FL: 60,
	FR: 60,
	FC: 80,
	LS: 90,
	RS: 90,
	TpFL: 100,
	TpFR: 100,
	TpBL: 100,
	TpBR: 100,
};

/** The readings of a round and the settings that they were taken under. */
export type Taken = {
	readonly truth: Truth;
	readonly tape: readonly TapeReading[];
	readonly meter: readonly MeterReading[];
	readonly found: SettingsSet;
};

/**
What an owner with a pocket calculator types in after the round: mean lengths at the speed of sound in the room, mean levels
less the meter's weighting, each rounded by itself. The subs are matched singly and aligned in the processor.
*/
export function decide({truth, tape, meter, found}: Taken, id: string, decidedAt: string): SettingsSet {
	const seat = 'middle';
	const arrivalMs = (source: string) => {
		const lengths = tape.filter(({from, to}) => from === seat && to === source).map(({metres}) => metres);
		return (
			(mean(lengths) / truth.speedOfSound) * 1000 + (source in truth.subs ? truth.processorLatencyMs : 0)
		);
	};

	const levelDb = (source: string, from: number, to: number) => {
		const readings = meter.filter(
			one =>
				one.source === source && one.seat === seat && one.signal?.kind === 'pink' && one.round === 'first',
		);
		return mean(readings.map(({decibels}) => decibels)) - bandWeightingDb(from, to);
	};

	const distance = (ms: number) => ({
		distanceMetres: {stepped: rounded((ms / 1000) * receiverSpeedOfSound, distanceStep)},
	});
	const channels: SettingsSet['channels'] = {};
	for (const channel of Object.keys(truth.speakers) as ChannelId[]) {
		const trim =
			(found.channels[channel]?.trimDb?.stepped ?? 0) + targetDb - levelDb(channel, ...mainsBandHertz);
		channels[channel] = {
			...distance(arrivalMs(channel)),
			trimDb: {stepped: rounded(trim, 0.5)},
			crossoverHertz: crossovers[channel]!,
		};
	}

	const subs = Object.keys(truth.subs);
	const latestMs = Math.max(...subs.map(arrivalMs));
	const quietestDb = Math.min(...subs.map(sub => levelDb(sub, ...subBandHertz)));
	// Equal and aligned subs add up to 20·lg(n) more than one.
	const togetherDb = quietestDb + 20 * Math.log10(subs.length);
	const lfeTrim = (found.channels.LFE1?.trimDb?.stepped ?? 0) + targetDb - togetherDb;
	channels.LFE1 = {...distance(latestMs), trimDb: {stepped: rounded(lfeTrim, 0.5)}, polarityInverted: false};
	const outputs = Object.fromEntries(
		subs.flatMap(sub => {
			const {output} = truth.subs[sub]!;
			const gain =
				(found.outputs?.[output ?? '']?.gainDb?.stepped ?? 0) + quietestDb - levelDb(sub, ...subBandHertz);
			const setting = {
				delayMs: {stepped: rounded(latestMs - arrivalMs(sub), 0.1)},
				gainDb: {stepped: rounded(gain, 0.5)},
				polarityInverted: false,
			};
			return output === undefined ? [] : [[output, setting]];
		}),
	);
	return {
		id,
		name: 'Typed in after the round',
		origin: 'entered',
		decidedAt,
		masterVolumeDb: 0,
		lfeLowPassHertz: 120,
		channels,
		...(Object.keys(outputs).length > 0 ? {outputs} : {}),
		dialledIn: [...Object.keys(channels), ...Object.keys(outputs)],
	};
}
