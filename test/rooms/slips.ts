import type {SettingsSet} from '../../source/profile/types.ts';
import type {Draws} from './physics/random.ts';
import {type MainId, mainIds, subIds} from './places.ts';
import {outputOf} from './sound.ts';

/** Something typed in wrongly, with what a meter could see of it. */
export type Slip = {
	readonly kind:
		| 'sign'
		| 'forgotten'
		| 'swapped'
		| 'one sub turned'
		| 'all subs turned'
		| 'sub delay'
		| 'crossover';
	/** Channels, subs or outputs that are rightly named for it. */
	readonly about: readonly string[];
	/** How far a level is off, dB; for delays ms; NaN where it has no size. */
	readonly size: number;
	readonly typed: (set: SettingsSet) => SettingsSet;
};

type Channels = SettingsSet['channels'];

const trimOf = (set: SettingsSet, id: MainId) => set.channels[id]?.trimDb?.stepped ?? 0;
const withTrims = (set: SettingsSet, trims: Partial<Record<MainId, number>>): SettingsSet => ({
	...set,
	channels: {
		...set.channels,
		...(Object.fromEntries(
			Object.entries(trims).map(([id, stepped]) => [id, {...set.channels[id as MainId], trimDb: {stepped}}]),
		) as Channels),
	},
});
const withOutputs = (
	set: SettingsSet,
	ids: readonly string[],
	change: (output: NonNullable<SettingsSet['outputs']>[string]) => object,
): SettingsSet => ({
	...set,
	outputs: {
		...set.outputs,
		...Object.fromEntries(ids.map(id => [id, {...set.outputs?.[id], ...change(set.outputs?.[id] ?? {})}])),
	},
});

/** The slips that are possible between two sets and can be seen at all: from 1 dB up, delays from 2 ms. */
export function possibleSlips(before: SettingsSet, set: SettingsSet): Slip[] {
	const slips: Slip[] = [];
	for (const id of mainIds) {
		const [old, now] = [trimOf(before, id), trimOf(set, id)];
		slips.push({
			kind: 'sign',
			about: [id],
			size: Math.abs(2 * now),
			typed: one => withTrims(one, {[id]: -now}),
		});
		slips.push({
			kind: 'forgotten',
			about: [id],
			size: Math.abs(now - old),
			typed: one => withTrims(one, {[id]: old}),
		});
	}

	for (const [index, first] of mainIds.entries()) {
		for (const second of mainIds.slice(index + 1)) {
			const [a, b] = [trimOf(set, first), trimOf(set, second)];
			slips.push({
				kind: 'swapped',
				about: [first, second],
				size: Math.abs(a - b),
				typed: one => withTrims(one, {[first]: b, [second]: a}),
			});
		}
	}

	const outputs = subIds.map(outputOf);
	const turn = (ids: readonly string[]) => (one: SettingsSet) =>
		withOutputs(one, ids, output => ({
			polarityInverted: !((output as {polarityInverted?: boolean}).polarityInverted ?? false),
		}));
	for (const [index, sub] of subIds.entries()) {
		const output = outputs[index]!;
		slips.push({kind: 'one sub turned', about: [sub, output], size: Number.NaN, typed: turn([output])});
		const delayOf = (one: SettingsSet) => one.outputs?.[output]?.delayMs?.stepped ?? 0;
		slips.push({
			kind: 'sub delay',
			about: [sub, output],
			size: Math.abs(delayOf(set) - delayOf(before)),
			typed: one => withOutputs(one, [output], () => ({delayMs: {stepped: delayOf(before)}})),
		});
	}

	slips.push({
		kind: 'all subs turned',
		about: [...subIds, ...outputs, 'LFE1'],
		size: Number.NaN,
		typed: turn(outputs),
	});
	const crossover = set.channels.FC?.crossoverHertz;
	for (const hertz of [60, 80, 100, 120]) {
		if (typeof crossover !== 'number' || hertz === crossover) continue;
		slips.push({
			kind: 'crossover',
			about: ['FC'],
			size: Number.NaN,
			typed: one => ({
				...one,
				channels: {...one.channels, FC: {...one.channels.FC, crossoverHertz: hertz}},
			}),
		});
	}

	return slips.filter(({kind, size}) => Number.isNaN(size) || size >= (kind === 'sub delay' ? 2 : 1));
}

const isOfTrims = ({kind}: Slip) => kind === 'sign' || kind === 'forgotten' || kind === 'swapped';

/** One slip of each kind of those that concern subs and crossovers; of trims one from 1, from 2 and from 3 dB, of any kind. */
export function drawnSlips(before: SettingsSet, set: SettingsSet, draws: Draws): Slip[] {
	const groups = new Map<string, Slip[]>();
	for (const slip of possibleSlips(before, set)) {
		const key = isOfTrims(slip) ? `trim ${Math.min(3, Math.floor(slip.size + 1e-9))}` : slip.kind;
		groups.set(key, [...(groups.get(key) ?? []), slip]);
	}

	// The kind is drawn first: there are many more pairs to swap than signs to get wrong.
	return [...groups.values()].map(group => {
		const kind = draws.pick([...new Set(group.map(slip => slip.kind))]);
		return draws.pick(group.filter(slip => slip.kind === kind));
	});
}
