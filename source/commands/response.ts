import {Trouble} from '../platform/trouble.ts';
import {readCurveFile} from '../platform/wholeFile.ts';
import {nameOf} from '../profile/names.ts';
import type {Profile} from '../profile/types.ts';
import {
	curveDistanceDb,
	curveFigures,
	type LevelCurve,
	smoothedCurve,
} from '../study/hearing/curveFigures.ts';
import {curveFromText} from '../study/hearing/curveText.ts';
import {profileCurves} from '../study/hearing/profileCurves.ts';
import {type Command, type CommandContext, exitCode} from './command.ts';
import {profileFrom} from './profileArgument.ts';

const chartRows = 20;
const bass = [20, 200] as const;

type Titled = {
	readonly title: string;
	readonly curve: LevelCurve;
	readonly isMicrophoneKnown: boolean;
	readonly decaySeconds?: number;
};

export const command: Command = {
	name: 'response',
	summary: 'Show and compare responses: what was recorded, or curves of other programs',
	takes: 'PROFILE|FILE...',
	flags: {
		source: {
			type: 'string',
			value: 'ID',
			help: 'Channel or sub to show; the first one recorded where not given',
		},
		seat: {type: 'string', value: 'SEAT', help: 'Seat to show; all that were recorded where not given'},
		part: {
			type: 'string',
			value: 'PART',
			choices: ['all', 'main', 'subs'],
			default: 'all',
			help: 'Everything that sounds, the main speaker without subs, or the subs alone',
		},
		smoothing: {
			type: 'string',
			value: 'N',
			choices: ['3', '6', '12', '24'],
			default: '6',
			help: 'Smoothing by 1/N octave: 6 to see what the room does, 24 for detail, 3 for balance',
		},
		words: {type: 'boolean', help: 'In words, for a screen reader'},
	},
	examples: [
		['roomtare response cellar-2026 --source FL', 'the front left at each seat that was recorded'],
		['roomtare response cellar-2025 cellar-2026 --source FL', 'a pair, before and after'],
		['roomtare response before.txt after.csv', 'text columns: frequency and level, from anywhere'],
		['roomtare response cellar-2026 --json', 'curves and figures for a script'],
	],
	async run(context) {
		const {flags, input, out, columns} = context;
		const perOctave = Number(flags.smoothing);
		const found: Titled[] = [];
		for (const word of input) found.push(...(await curvesFrom(context, word, input.length > 1)));
		if (found.length === 0) {
			out(
				flags.json
					? JSON.stringify({curves: []})
					: 'No response was recorded that fits. Record a round: roomtare signals DIR --round.',
			);
			return exitCode.no;
		}

		const shown = found.map(each => ({
			...each,
			figures: curveFigures(each.curve, each.isMicrophoneKnown),
			curve: smoothedCurve(each.curve, perOctave),
		}));
		const distanceDb =
			shown.length === 2 ? curveDistanceDb(shown[0]!.curve, shown[1]!.curve, bass) : undefined;
		if (flags.json) {
			const curves = shown.map(({curve, ...rest}) => ({
				...rest,
				frequenciesHz: [...curve.frequenciesHz],
				levelsDb: [...curve.levelsDb],
			}));
			out(
				JSON.stringify(
					{smoothing: perOctave, curves, ...(distanceDb !== undefined && {distanceDb})},
					null,
					2,
				),
			);
			return exitCode.fine;
		}

		const {curveLines} = await import('../report/hearing/curves.ts');
		out(
			curveLines(shown, {
				width: columns,
				rows: chartRows,
				isInWords: flags.words === true || !context.isTerminal,
				...(distanceDb !== undefined && {distanceDb}),
			}).join('\n'),
		);
		return exitCode.fine;
	},
};

const isText = (word: string) => /\.(txt|csv|tsv|dat)$/i.test(word);

async function curvesFrom(context: CommandContext, word: string, isOneOfSeveral: boolean): Promise<Titled[]> {
	if (!isText(word)) return fromProfile(context, await profileFrom(context, word), isOneOfSeveral);
	const {bytes, name} = readCurveFile(word);
	const curve = curveFromText(new TextDecoder().decode(bytes));
	if (!curve)
		throw new Trouble(
			`${word} holds no curve: expected lines with a frequency in hertz and a level in dB, three at least.`,
		);
	// Whoever wrote the file knew its microphone.
	return [{title: name, curve, isMicrophoneKnown: true}];
}

function fromProfile({flags}: CommandContext, profile: Profile, isOneOfSeveral: boolean): Titled[] {
	const all = profileCurves(profile).filter(({part}) => part === flags.part);
	const source = (flags.source as string | undefined) ?? all[0]?.source;
	const own = all.filter(each => each.source === source && (!flags.seat || each.seat === flags.seat));
	const seats = [...new Set(own.map(({seat}) => seat))];
	const dates = new Set(own.map(({date}) => date));
	// The newest at each seat; of a pair of profiles the newest at the first seat alone.
	const newest = seats.flatMap(seat => own.findLast(each => each.seat === seat) ?? []);
	return (isOneOfSeveral ? newest.slice(0, 1) : newest).map(each => ({
		...each,
		title: [
			nameOf(profile, each.source),
			nameOf(profile, each.seat),
			...(isOneOfSeveral || dates.size > 1 ? [each.date] : []),
		].join(', '),
	}));
}
