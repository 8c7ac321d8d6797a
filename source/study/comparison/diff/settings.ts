import {settingFor, standingSettings} from '../../../profile/ask/settings.ts';
import {type CrossoverSide, crossoverParts} from './crossoverParts.ts';
import {outputChanges} from './outputs.ts';
import type {Match, SettingChange} from './profileDiff.ts';
import type {Solved} from './solved.ts';
import {timingChange} from './timingChange.ts';
import {dialledTiming, timingSides} from './timingSide.ts';
import {trimParts} from './trimParts.ts';
import {trimSides} from './trimSide.ts';
import {changeScale, kindWeight} from './weights.ts';

type TrimSides = ReturnType<typeof trimSides>;

function trimChange(
	older: Solved,
	newer: Solved,
	match: Match,
	sides: {readonly older: TrimSides; readonly newer: TrimSides},
): SettingChange[] {
	const before = sides.older.get(match.older);
	const after = sides.newer.get(match.newer);
	const settingOf = ({profile, solution}: Solved, id: string) =>
		settingFor(standingSettings(profile), id)?.trimDb?.stepped ??
		solution.channels.find(channel => channel.id === id)?.trimDb?.stepped;
	const was = settingOf(older, match.older);
	const is = settingOf(newer, match.newer);
	if (was === is) return [];
	const common = {
		box: 'receiver',
		about: match.newer,
		name: match.name,
		setting: 'trim',
		unit: 'dB',
		before: was,
		after: is,
	} as const;
	if (was === undefined || is === undefined) {
		return [{...common, parts: [], notSplit: missingSide(was), weight: 1}];
	}

	const change = is - was;
	const weight = Math.abs(change) / changeScale.dB;
	if (!before || !after) {
		const notSplit = `no level in the ${before ? 'newer' : 'older'} profile`;
		return [{...common, change, parts: [{cause: 'unexplained', amount: change}], notSplit, weight}];
	}

	const sigma = Math.hypot(before.sigma, after.sigma);
	return [{...common, change, sigma, parts: trimParts(before, after), weight}];
}

const missingSide = (before: unknown) => `not set in the ${before === undefined ? 'older' : 'newer'} profile`;

function crossoverSide({profile, solution}: Solved, id: string) {
	const value =
		settingFor(standingSettings(profile), id)?.crossoverHertz ??
		solution.channels.find(channel => channel.id === id)?.crossoverHertz;
	const limitHertz = profile.channels.find(channel => channel.id === id)?.speaker?.lowLimitHertz;
	return {value, limitHertz, choicesHertz: profile.receiver?.crossover.choicesHertz ?? []};
}

function crossoverChange(older: Solved, newer: Solved, match: Match): SettingChange[] {
	const before = crossoverSide(older, match.older);
	const after = crossoverSide(newer, match.newer);
	if (before.value === after.value) return [];
	const common = {
		box: 'receiver',
		about: match.newer,
		name: match.name,
		setting: 'crossover',
		unit: 'Hz',
		before: before.value,
		after: after.value,
	} as const;
	if (typeof before.value !== 'number' || typeof after.value !== 'number') {
		const isMissing = before.value === undefined || after.value === undefined;
		const notSplit = isMissing ? missingSide(before.value) : 'full range is no frequency';
		return [{...common, parts: [], notSplit, weight: isMissing ? 1 : kindWeight.replaced}];
	}

	const change = after.value - before.value;
	const sideOf = ({value, ...side}: typeof before): CrossoverSide => ({
		...side,
		dialledHertz: value as number,
	});
	const parts = crossoverParts(sideOf(before), sideOf(after));
	return [{...common, change, parts, weight: Math.abs(change) / changeScale.Hz}];
}

function polarityChange(older: Solved, newer: Solved, match: Match): SettingChange[] {
	const settingOf = ({profile, solution}: Solved, id: string) =>
		settingFor(standingSettings(profile), id)?.polarityInverted ??
		solution.channels.find(channel => channel.id === id)?.polarityInverted ??
		false;
	const before = settingOf(older, match.older);
	const after = settingOf(newer, match.newer);
	if (before === after) return [];
	const word = (isInverted: boolean) => (isInverted ? 'inverted' : 'normal');
	return [
		{
			box: 'receiver',
			about: match.newer,
			name: match.name,
			setting: 'polarity',
			unit: '',
			before: word(before),
			after: word(after),
			parts: [],
			notSplit: 'polarity is one or the other',
			weight: kindWeight.polarity,
		},
	];
}

/** A master volume as boxes show it, dB. */
const toTenth = (decibels: number | undefined) =>
	decibels === undefined ? undefined : Math.round(10 * decibels) / 10;

function boxChanges(older: Solved, newer: Solved): SettingChange[] {
	const before = standingSettings(older.profile);
	const after = standingSettings(newer.profile);
	if (!before || !after) return [];
	const one = (
		setting: 'master volume' | 'LFE low-pass',
		unit: 'dB' | 'Hz',
		was?: number,
		is?: number,
	): SettingChange[] => {
		if (was === is) return [];
		const common = {
			box: 'receiver',
			about: '',
			name: 'Receiver',
			setting,
			unit,
			before: was,
			after: is,
		} as const;
		if (was === undefined || is === undefined)
			return [{...common, parts: [], notSplit: missingSide(was), weight: 1}];
		const parts = [{cause: 'chosen', amount: is - was}] as const;
		return [{...common, change: is - was, parts, weight: Math.abs(is - was) / changeScale[unit]}];
	};

	return [
		...one('master volume', 'dB', toTenth(before.masterVolumeDb), toTenth(after.masterVolumeDb)),
		...one('LFE low-pass', 'Hz', before.lfeLowPassHertz, after.lfeLowPassHertz),
	];
}

/**
Every setting that differs between two profiles, each with the reasons of its change.

A setting is what the profile stores as dialled in; where it stores none, what the solution would dial in.
*/
export function settingChanges(older: Solved, newer: Solved, matches: readonly Match[]): SettingChange[] {
	const sidesOf = ({profile, solution}: Solved) => timingSides(profile, solution, standingSettings(profile));
	const trimsOf = ({profile, solution}: Solved) => trimSides(profile, solution, standingSettings(profile));
	const trims = {older: trimsOf(older), newer: trimsOf(newer)};
	const before = sidesOf(older);
	const after = sidesOf(newer);
	const dialled = ({profile, solution}: Solved, id: string) =>
		dialledTiming(profile, standingSettings(profile), id) ??
		solution.channels.find(channel => channel.id === id)?.timing?.stepped;
	const kindOf = ({profile, solution}: Solved, id: string) =>
		// Where no receiver is described, entries are delays.
		profile.receiver?.timing.kind ??
		solution.channels.find(channel => channel.id === id)?.timing?.kind ??
		'delay';
	const channels = matches.filter(({kind}) => kind === 'channel');
	return [
		...channels.flatMap(match => [
			...timingChange(
				match,
				{
					side: before.get(match.older),
					value: dialled(older, match.older),
					kind: kindOf(older, match.older),
				},
				{
					side: after.get(match.newer),
					value: dialled(newer, match.newer),
					kind: kindOf(newer, match.newer),
				},
			),
			...trimChange(older, newer, match, trims),
			...crossoverChange(older, newer, match),
			...polarityChange(older, newer, match),
		]),
		...outputChanges(older, newer, matches),
		...boxChanges(older, newer),
	].sort((a, b) => b.weight - a.weight);
}
