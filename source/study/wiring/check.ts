import {finding} from '../../profile/finding.ts';
import type {Profile} from '../../profile/types.ts';
import {crossSectionSquareMillimetres} from '../../science/acoustics/cable.ts';
import {isKnownEnd, readEnd, signalDirection} from './ends.ts';
import type {WiringFinding} from './facts.ts';
import {straightLineMetres} from './lengths.ts';
import type {Cable, Positions} from './result.ts';

type Check = (cables: readonly Cable[], profile: Profile, positions: Positions) => WiringFinding[];

const entered = (cables: readonly Cable[]) => cables.filter(({origin}) => origin === 'entered');

/** Two cables on one terminal: a mistake, but for a line output shared by a Y-lead. */
const terminalsTaken: Check = cables => {
	const byEnd = new Map<string, Cable[]>();
	for (const cable of entered(cables)) {
		for (const end of new Set([cable.from, cable.to])) byEnd.set(end, [...(byEnd.get(end) ?? []), cable]);
	}

	return [...byEnd]
		.filter(([, sharing]) => sharing.length > 1)
		.map(([end, sharing]) => {
			const facts = {cables: sharing.map(({id}) => id)};
			const isSplit = sharing.every(({kind, from}) => kind === 'line' && from === end);
			return isSplit
				? finding('note', 'line-split', [end], facts)
				: finding('problem', 'terminal-taken', [end], facts);
		});
};

/** Channels and subs that no entered cable reaches. Silent while nothing at all is entered: then all is a proposal. */
const unreached: Check = cables => {
	if (entered(cables).length === 0) return [];
	return cables
		.filter(({origin}) => origin === 'proposed')
		.map(({from, to}) => finding('problem', 'cable-missing', [readEnd(to).box], {from, to}));
};

/** Ends of speaker and line cables that name nothing in the profile. */
const unknownEnds: Check = (cables, profile) =>
	entered(cables)
		.filter(({kind}) => kind === 'speaker' || kind === 'line')
		.flatMap(({id, from, to}) =>
			[from, to]
				.filter(end => !isKnownEnd(profile, end))
				.map(end => finding('doubt', 'end-unknown', [id], {end})),
		);

/** Cables that go by one name, so that what is said of one could mean another. */
const idsTwice: Check = cables => {
	const ids = entered(cables).map(({id}) => id);
	return [...new Set(ids.filter((id, index) => ids.indexOf(id) !== index))].map(id =>
		finding('problem', 'cable-twice', [id], {count: ids.filter(other => other === id).length}),
	);
};

const reversedEnds: Check = (cables, profile) =>
	entered(cables).flatMap(({id, from, to, kind}): WiringFinding[] => {
		if (kind !== 'speaker' && kind !== 'line' && kind !== 'mains') return [];
		const [first, second] = [signalDirection(profile, from), signalDirection(profile, to)];
		if (first === 'takes' && second !== 'takes')
			return [finding('problem', 'ends-reversed', [id], {from, to})];
		if (first === second && first !== 'unknown') {
			const both = first === 'gives' ? 'outputs' : 'inputs';
			return [finding('problem', 'ends-alike', [id], {from, to, both})];
		}

		return [];
	});

/** A receiver output that ends at another channel's speaker. */
const crossedChannels: Check = (cables, profile) =>
	entered(cables).flatMap(({id, from, to}): WiringFinding[] => {
		const isChannel = (name: string) => profile.channels.some(channel => channel.id === name);
		for (const [near, far] of [
			[from, to],
			[to, from],
		] as const) {
			const output = readEnd(near);
			const speaker = readEnd(far).box;
			if (output.box !== 'receiver' || !isChannel(output.terminal) || !isChannel(speaker)) continue;
			if (output.terminal === speaker) continue;
			return [finding('problem', 'channels-crossed', [id], {output: output.terminal, speaker})];
		}

		return [];
	});

const reversedPolarity: Check = (_, profile) =>
	(profile.wiring?.connections ?? [])
		.filter(({polarity}) => polarity === 'reversed')
		.map(({id}) => finding('problem', 'polarity-reversed', [id]));

const labelsTwice: Check = cables => {
	const seen = new Map<string, string>();
	return entered(cables).flatMap(({id, label}): WiringFinding[] => {
		const first = seen.get(label);
		seen.set(label, first ?? id);
		return first === undefined ? [] : [finding('advice', 'label-twice', [id], {label, other: first})];
	});
};

const runsTooShort: Check = (cables, profile, positions) =>
	cables.flatMap((cable): WiringFinding[] => {
		if (cable.run?.from !== 'measured') return [];
		const straightMetres = straightLineMetres(cable, profile, positions);
		const {id, cutMetres = 0} = cable;
		if (straightMetres === undefined || straightMetres <= cutMetres) return [];
		return [finding('problem', 'run-too-short', [id], {cutMetres, straightMetres})];
	});

const thinConductors: Check = cables =>
	cables.flatMap(({id, kind, cutMetres, impedanceOhms, conductor, needs}): WiringFinding[] => {
		if (kind !== 'speaker' || cutMetres === undefined || impedanceOhms === undefined) return [];
		if (!needs) return [finding('problem', 'run-too-long', [id], {cutMetres, impedanceOhms})];
		if (!conductor || !isThinner(conductor, needs)) return [];
		return [finding('advice', 'conductor-thin', [id], {conductor, needs, cutMetres, impedanceOhms})];
	});

// Three per cent: 1.5 mm² and 16 AWG (1.31 mm²) differ by more, rounding of a reel's print by less.
function isThinner(present: NonNullable<Cable['conductor']>, needed: NonNullable<Cable['needs']>): boolean {
	return crossSectionSquareMillimetres(present) < crossSectionSquareMillimetres(needed) * 0.97;
}

const checks: readonly Check[] = [
	terminalsTaken,
	unreached,
	unknownEnds,
	idsTwice,
	reversedEnds,
	crossedChannels,
	reversedPolarity,
	labelsTwice,
	runsTooShort,
	thinConductors,
];

/** Everything that is wrong or doubtful about the cables. */
export function checkCables(
	cables: readonly Cable[],
	profile: Profile,
	positions: Positions,
): WiringFinding[] {
	return checks.flatMap(check => check(cables, profile, positions));
}
