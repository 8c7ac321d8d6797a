import type {LengthUnit, Profile} from '../../profile/types.ts';
import {conductorText} from '../../profile/units/conductor.ts';
import {formatLength} from '../../profile/units/length.ts';
import {crossSectionSquareMillimetres} from '../../science/acoustics/cable.ts';
import type {Remark} from '../calibration/result.ts';
import {directionOf, readEnd} from './ends.ts';
import {straightLineMetres} from './lengths.ts';
import type {Cable, Positions} from './result.ts';

type Check = (cables: readonly Cable[], profile: Profile, positions: Positions) => Remark[];

const entered = (cables: readonly Cable[]) => cables.filter(({origin}) => origin === 'entered');
const unitOf = (profile: Profile): LengthUnit => profile.lengthUnit ?? 'm';

/** Two cables on one terminal: a mistake, but for a line output shared by a Y-lead. */
const terminalsTaken: Check = cables => {
	const byEnd = new Map<string, Cable[]>();
	for (const cable of entered(cables)) {
		for (const end of new Set([cable.from, cable.to])) byEnd.set(end, [...(byEnd.get(end) ?? []), cable]);
	}

	return [...byEnd]
		.filter(([, sharing]) => sharing.length > 1)
		.map(([end, sharing]) => {
			const names = sharing.map(({id}) => id).join(' and ');
			const isSplit = sharing.every(({kind, from}) => kind === 'line' && from === end);
			return isSplit
				? {
						kind: 'note',
						code: 'line-split',
						about: end,
						text: `${end} feeds ${names}: a Y-lead is needed there.`,
					}
				: {
						kind: 'problem',
						code: 'terminal-taken',
						about: end,
						text: `${end} holds ${sharing.length} cables: ${names}. One of them belongs elsewhere; follow it by hand and correct its end.`,
					};
		});
};

/** Channels and subs that no entered cable reaches. Silent while nothing at all is entered: then all is a proposal. */
const unreached: Check = cables => {
	if (entered(cables).length === 0) return [];
	return cables
		.filter(({origin}) => origin === 'proposed')
		.map(({from, to}) => ({
			kind: 'problem',
			code: 'cable-missing',
			about: readEnd(to).box,
			text: `No cable reaches ${readEnd(to).box}. It needs one from ${from} to ${to}.`,
		}));
};

const reversedEnds: Check = (cables, profile) =>
	entered(cables).flatMap(({id, from, to, kind}): Remark[] => {
		if (kind !== 'speaker' && kind !== 'line' && kind !== 'mains') return [];
		const [first, second] = [directionOf(profile, from), directionOf(profile, to)];
		if (first === 'takes' && second !== 'takes') {
			const text = `${id} is entered from ${from} to ${to}, but ${from} only takes a signal. Swap its ends, on paper or in the room.`;
			return [{kind: 'problem', code: 'ends-reversed', about: id, text}];
		}

		if (first === second && first !== 'unknown') {
			const what = first === 'gives' ? 'an output to an output' : 'an input to an input';
			const text = `${id} joins ${what} (${from}, ${to}). Nothing will be heard, and two outputs can harm each other: disconnect it.`;
			return [{kind: 'problem', code: 'ends-alike', about: id, text}];
		}

		return [];
	});

/** A receiver output that ends at another channel's speaker. */
const crossedChannels: Check = (cables, profile) =>
	entered(cables).flatMap(({id, from, to}): Remark[] => {
		const isChannel = (name: string) => profile.channels.some(channel => channel.id === name);
		for (const [near, far] of [
			[from, to],
			[to, from],
		] as const) {
			const output = readEnd(near);
			const speaker = readEnd(far).box;
			if (output.box !== 'receiver' || !isChannel(output.terminal) || !isChannel(speaker)) continue;
			if (output.terminal === speaker) continue;
			const text = `${id} runs from the receiver’s ${output.terminal} to the speaker of ${speaker}. Move it to ${speaker} on the receiver, or correct the list.`;
			return [{kind: 'problem', code: 'channels-crossed', about: id, text}];
		}

		return [];
	});

const reversedPolarity: Check = (_, profile) =>
	(profile.wiring?.connections ?? [])
		.filter(({polarity}) => polarity === 'reversed')
		.map(({id}) => ({
			kind: 'problem',
			code: 'polarity-reversed',
			about: id,
			text: `${id} has plus and minus swapped. With everything off, swap them at one end only.`,
		}));

const labelsTwice: Check = cables => {
	const seen = new Map<string, string>();
	return entered(cables).flatMap(({id, label}): Remark[] => {
		const first = seen.get(label);
		seen.set(label, first ?? id);
		if (first === undefined) return [];
		const text = `${first} and ${id} carry the same label “${label}”. Give one of them another.`;
		return [{kind: 'advice', code: 'label-twice', about: id, text}];
	});
};

const runsTooShort: Check = (cables, profile, positions) =>
	cables.flatMap((cable): Remark[] => {
		if (cable.run?.from !== 'measured') return [];
		const straight = straightLineMetres(cable, profile, positions);
		if (straight === undefined || straight <= (cable.cutMetres ?? 0)) return [];
		const show = (metres: number) => formatLength(metres, unitOf(profile));
		const text = `${cable.id} is cut to ${show(cable.cutMetres ?? 0)}, but its ends stand ${show(straight)} apart in a straight line. Measure the route again.`;
		return [{kind: 'problem', code: 'run-too-short', about: cable.id, text}];
	});

const thinConductors: Check = (cables, profile) =>
	cables.flatMap((cable): Remark[] => {
		if (cable.kind !== 'speaker' || cable.cutMetres === undefined || cable.impedanceOhms === undefined)
			return [];
		const length = formatLength(cable.cutMetres, unitOf(profile));
		if (!cable.needs) {
			const text = `${cable.id}: ${length} at ${cable.impedanceOhms} Ω is more than any usual conductor carries within 5 %. Shorten the route, or move the amplifier.`;
			return [{kind: 'problem', code: 'run-too-long', about: cable.id, text}];
		}

		if (!cable.conductor || !isThinner(cable.conductor, cable.needs)) return [];
		const text = `${cable.id}: ${conductorText(cable.conductor)} is thin for ${length} at ${cable.impedanceOhms} Ω; ${conductorText(cable.needs)} keeps the loop within 5 % of the impedance.`;
		return [{kind: 'advice', code: 'conductor-thin', about: cable.id, text}];
	});

// Three per cent: 1.5 mm² and 16 AWG (1.31 mm²) differ by more, rounding of a reel's print by less.
function isThinner(present: NonNullable<Cable['conductor']>, needed: NonNullable<Cable['needs']>): boolean {
	return crossSectionSquareMillimetres(present) < crossSectionSquareMillimetres(needed) * 0.97;
}

const checks: readonly Check[] = [
	terminalsTaken,
	unreached,
	reversedEnds,
	crossedChannels,
	reversedPolarity,
	labelsTwice,
	runsTooShort,
	thinConductors,
];

/** Everything that is wrong or doubtful about the cables, one sentence each. */
export function checkCables(cables: readonly Cable[], profile: Profile, positions: Positions): Remark[] {
	return checks.flatMap(check => check(cables, profile, positions));
}
