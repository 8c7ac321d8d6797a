import type {MeterReading, Profile, SettingsSet} from '../../../../source/profile/types.ts';
import {blend} from '../../../../source/study/calibration/blend/blend.ts';
import {readingOfStep} from '../../../../source/study/calibration/blend/readingOfStep.ts';
import type {BlendStep} from '../../../../source/study/calibration/blend/steps.ts';
import {toSettingsSet} from '../../../../source/study/calibration/toSettingsSet.ts';
import {blendInputs, solve} from '../../../afresh.ts';
import {roomProfile, type Truth, trueLevel} from './room.ts';

/** ISO 9613-1 at 20 °C, m/s. */
const speed = 343.2;
export const taped: Truth = {
	crossoverHertz: 80,
	mainsLimitHertz: 60,
	subLimitHertz: 20,
	arrivalMs: {FL: 9, FC: 8, FR: 9.2, sub1: 13, sub2: 16},
	levelDb: () => 75,
};
/** What no tape tells: the second sub is 6 ms later, and its lead is turned. */
export const apart: Truth = {...taped, arrivalMs: {...taped.arrivalMs, sub2: 22}, invertedAtBox: ['sub2']};
export const subs = ['sub1', 'sub2'];

export function profileWith(change: Partial<Profile> = {}): Profile {
	const found: SettingsSet = {
		id: 'found',
		origin: 'found',
		channels: {
			...Object.fromEntries(['FL', 'FC', 'FR'].map(id => [id, {delayMs: {stepped: 0}, crossoverHertz: 80}])),
			LFE1: {delayMs: {stepped: 0}},
		},
		outputs: {A: {delayMs: {stepped: 0}}, B: {delayMs: {stepped: 0}}},
	};
	const profile = roomProfile(taped, {
		settings: [found],
		tape: Object.entries(taped.arrivalMs).map(([from, ms]) => ({
			from,
			to: 'sofa',
			metres: (ms * speed) / 1000,
		})),
		air: {temperatureCelsius: 20, humidityPercent: 0},
		bassProcessor: {
			latencyMs: 0,
			outputs: ['A', 'B'],
			delay: {stepMs: 0.1, minimumMs: 0, maximumMs: 30},
			gain: {stepDb: 0.5, minimumDb: -20, maximumDb: 6},
			invertsOutputs: true,
		},
		...change,
	});
	return {
		...profile,
		subs: profile.subs!.map((sub, index) => ({...sub, processorOutput: 'AB'[index]!})),
	};
}

export const dialledIn = (profile: Profile, id: string): Profile => ({
	...profile,
	settings: [...profile.settings!, toSettingsSet(solve(profile), {id})],
});
export const resultOf = (profile: Profile) => blend(blendInputs(profile));
export const pairIn = (profile: Profile) => resultOf(profile).pair!;

/** What a set gives each sub and front. */
export function boxesOf({channels, outputs}: SettingsSet) {
	const ofChannel = (id: string) => channels[id as 'FC']?.delayMs?.stepped ?? 0;
	const ofSub = (output: string) => ofChannel('LFE1') + (outputs?.[output]?.delayMs?.stepped ?? 0);
	return {
		delayMs: {
			FL: ofChannel('FL'),
			FC: ofChannel('FC'),
			FR: ofChannel('FR'),
			sub1: ofSub('A'),
			sub2: ofSub('B'),
		} as Record<string, number>,
		inverted: [
			...(outputs?.A?.polarityInverted ? ['sub1'] : []),
			...(outputs?.B?.polarityInverted ? ['sub2'] : []),
		],
	};
}

/** The power of everything that plays, over a band in even steps of pitch, or at a tone, dB. */
export function levelOf(truth: Truth, set: SettingsSet, step: BlendStep): number {
	const {delayMs, inverted} = boxesOf(set);
	const moved = step.added.subs ?? subs;
	const boxes = {
		delayMs: {...delayMs},
		inverted: subs.filter(id => inverted.includes(id) !== (step.added.isTurned && moved.includes(id))),
	};
	for (const id of moved) boxes.delayMs[id]! += step.added.delayMs;
	const {signal} = step;
	const mains = step.playInto.filter(id => id !== 'LFE1');
	const each = mains.length === 0 ? [subs] : mains.map(id => [id, ...subs]);
	const at = (ids: readonly string[], hertz: number) => 10 ** (trueLevel(truth, boxes, ids, hertz) / 10);
	const points = 100;
	const sum = each.reduce((all, ids) => {
		if (signal.kind === 'tone') return all + at(ids, signal.hertz);
		let power = 0;
		for (let index = 0; index < points; index++)
			power += at(ids, signal.fromHertz * (signal.toHertz / signal.fromHertz) ** ((index + 0.5) / points));
		return all + power / points;
	}, 0);
	return 10 * Math.log10(sum);
}

export function read(
	profile: Profile,
	truth: Truth,
	step: BlendStep,
	set = profile.settings!.at(-1)!,
): Profile {
	const reading: MeterReading = {
		...readingOfStep(step, subs),
		decibels: levelOf(truth, set, step),
		weighting: 'Z',
		inForce: set.id,
	};
	return {...profile, meter: [...(profile.meter ?? []), reading]};
}

/** Reads what a change between the subs asks for, until it asks no more. */
export function walkedPair(
	start: Profile,
	truth: Truth,
	alter: (profile: Profile, step: BlendStep) => Profile = same => same,
): Profile {
	let profile = start;
	for (;;) {
		const {blocks, status} = pairIn(profile);
		const steps = blocks.flatMap(block => block.steps).filter(({isTaken}) => !isTaken);
		if (steps.length === 0 || (status !== 'reading' && status !== 'to try')) return profile;
		for (const step of steps) profile = alter(read(profile, truth, step), step);
	}
}
