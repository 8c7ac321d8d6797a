import {markOf} from '../platform/profiles/read.ts';
import {saveProfile} from '../platform/profiles/save.ts';
import {decodeSound, readSoundFile} from '../platform/soundFile.ts';
import {Trouble} from '../platform/trouble.ts';
import {settingsInForce, standingSettings} from '../profile/ask/settings.ts';
import {hasProblem} from '../profile/finding.ts';
import {distancesOf} from '../study/calibration/distancesOf.ts';
import {solve} from '../study/calibration/solve.ts';
import {openedSound} from '../study/hearing/openedSound.ts';
import {hearingDesk} from '../study/hearing/report.ts';
import {withLatencies, withRound} from '../study/hearing/takeRound.ts';
import {type Command, type CommandContext, exitCode} from './command.ts';
import {costlyPartsOf} from './costlyParts.ts';
import {microphoneOf, namesFor, replugged, seatsFor} from './hearOptions.ts';
import {readProfileArgument} from './profileArgument.ts';

export const command: Command = {
	name: 'hear',
	summary: 'Read recordings of a round: arrivals, polarity, levels, decay, and the blend',
	takes: 'PROFILE RECORDING...',
	flags: {
		take: {type: 'boolean', help: 'Take what is sound into the profile; without it nothing is changed'},
		playing: {
			type: 'string',
			value: 'NUMBER=WHAT',
			isMultiple: true,
			help: 'What a playing of the table is, in place of what its sound says: spare, a seat, or a seat, a colon, and how many groups of subs were changed in it',
		},
		latency: {
			type: 'boolean',
			help: 'With --take: what lines come late by, against their distance, counts as latency of their links',
		},
		seat: {
			type: 'string',
			value: 'SEAT',
			isMultiple: true,
			help: 'Seat of each spot in the order of the recordings; the reference seat first where not given',
		},
		as: {
			type: 'string',
			value: 'PLACE=CHANNEL',
			isMultiple: true,
			help: 'What was plugged into a channel of the file for this recording, such as SiL=TpFL',
		},
		microphone: {
			type: 'string',
			value: 'FILE',
			help: 'Curve of the microphone as text columns, frequency and level, to be taken off',
		},
		proof: {type: 'boolean', help: 'These playings are to check settings that were dialled in'},
	},
	examples: [
		['roomtare hear cellar-2026 evening.wav', 'what was recorded, what is wrong with it, what it says'],
		['roomtare hear cellar-2026 evening.wav sofa-left.wav --take', 'the same, taken into the profile'],
		[
			'roomtare hear cellar-2026 evening.wav --playing 1=spare --playing 4=middle:1',
			'the first one does not count; in the fourth one group of subs was changed',
		],
		[
			'roomtare hear cellar-2026 tops.wav --as SiL=TpFL --as SiR=TpFR',
			'overheads plugged into the side channels',
		],
	],
	async run(context) {
		const {flags, input, out, say} = context;
		const [word, ...paths] = input as readonly [string, ...string[]];
		const {profile, path: place, mark} = await readProfileArgument(context, word);
		const seats = seatsFor(profile, flags.seat as readonly string[] | undefined);
		const names = namesFor(profile, flags.playing as readonly string[] | undefined);
		const plugged = replugged(profile, flags.as as readonly string[] | undefined);
		const microphone = microphoneOf(flags.microphone as string | undefined);
		const desk = hearingDesk(text => markOf(new TextEncoder().encode(text)));
		for (const path of paths) {
			const opened = await openedSound(readSoundFile(path), decodeSound);
			const gear = {replugged: plugged, ...(microphone && {microphone: microphone.curve})};
			heardTo(context, desk.hear(opened, profile, gear), opened.name);
		}

		const report = desk.report(profile, distancesOf(solve(profile, costlyPartsOf(profile))), {
			round: flags.proof === true ? 'proof' : 'first',
			seats,
			names,
			...(microphone && {microphone: microphone.name}),
			takenAt: context.now().toISOString(),
		});
		const isTaken = flags.take === true && report.taken.recordings.length > 0;
		if (isTaken) {
			if (place === undefined)
				throw new Trouble('A profile from standard input cannot be written to: name its file.');
			const taken = withRound(profile, report.taken, report.blend);
			const next = flags.latency === true ? withLatencies(taken, report.offers.latencies) : taken;
			const saved = saveProfile(place, next, mark?.());
			if (saved.kind !== 'saved') throw new Trouble('problems' in saved ? saved.problems : saved.text);
		}

		const shown = {...report, isTaken};
		if (flags.json) {
			const {heardJson} = await import('../report/hearing/json.ts');
			out(heardJson(profile, shown));
		} else {
			const {heardLines} = await import('../report/hearing/text.ts');
			out(heardLines(profile, shown, context.columns).join('\n'));
		}

		if (settingsInForce(profile, {inForce: standingSettings(profile)?.id}) === undefined)
			say('No settings are known to stand in the boxes: delays are taken as none.');
		const {files, findings, rows, rounds} = report;
		const all = [
			...files.flatMap(file => file.findings),
			...findings,
			...rows.flatMap(row => [...row.playing.findings, ...row.findings]),
		];
		return rounds.length === 0 || hasProblem(all) ? exitCode.no : exitCode.fine;
	},
};

const stepWords = {
	finding: 'looking for playings',
	cutting: 'cutting sweeps',
	judging: 'judging lines',
} as const;

/** Runs the work to its end; on a terminal it is told how far it is, twice a second at most. */
function heardTo<Value>(
	{isTerminal, say, now}: CommandContext,
	work: Generator<{readonly step: keyof typeof stepWords; readonly done: number; readonly of: number}, Value>,
	name: string,
): Value {
	let told = now().getTime();
	let next = work.next();
	while (!next.done) {
		const time = now().getTime();
		if (isTerminal && time - told > 500) {
			told = time;
			say(`${name}: ${stepWords[next.value.step]}, ${Math.round((100 * next.value.done) / next.value.of)} %`);
		}

		next = work.next();
	}

	return next.value;
}
