import {markOf} from '../platform/profiles/read.ts';
import {saveProfile} from '../platform/profiles/save.ts';
import {Trouble} from '../platform/trouble.ts';
import {settingsInForce, standingSettings} from '../profile/ask/settings.ts';
import {finding, hasProblem} from '../profile/finding.ts';
import type {Profile, RecordedResponse} from '../profile/types.ts';
import {speedOfSound} from '../science/acoustics/air.ts';
import {solve} from '../study/calibration/solve.ts';
import {againstTape} from '../study/hearing/againstTape.ts';
import {asNamed, channelNamer} from '../study/hearing/asNamed.ts';
import {expectedLines} from '../study/hearing/expected.ts';
import type {HeardPlaying} from '../study/hearing/heardPlaying.ts';
import {hearRecording} from '../study/hearing/hearRecording.ts';
import {keptRound} from '../study/hearing/keepRound.ts';
import {profileBlend, withFoundBlend} from '../study/hearing/profileBlend.ts';
import {seatRounds} from '../study/hearing/seatRound.ts';
import {subGroups} from '../study/hearing/visit.ts';
import {withoutMicrophone} from '../study/hearing/withoutMicrophone.ts';
import {type Command, type CommandContext, exitCode} from './command.ts';
import {microphoneOf, replugged, seatsFor} from './hearOptions.ts';
import {readProfileArgument} from './profileArgument.ts';
import {openSound} from './sounds.ts';

export const command: Command = {
	name: 'hear',
	summary: 'Read recordings of a round: arrivals, polarity, levels, decay, and the blend',
	takes: 'PROFILE RECORDING...',
	flags: {
		take: {type: 'boolean', help: 'Take what is sound into the profile; without it nothing is changed'},
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
			'roomtare hear cellar-2026 tops.wav --as SiL=TpFL --as SiR=TpFR',
			'overheads plugged into the side channels',
		],
	],
	async run(context) {
		const {flags, input, out, say} = context;
		const [word, ...paths] = input as readonly [string, ...string[]];
		const {profile, path: place, mark} = await readProfileArgument(context, word);
		const seats = seatsFor(profile, flags.seat as readonly string[] | undefined);
		const nameOf = channelNamer(
			profile.channels,
			replugged(profile, flags.as as readonly string[] | undefined),
		);
		const microphone = microphoneOf(flags.microphone as string | undefined);

		const playings: HeardPlaying[] = [];
		const from = new Map<HeardPlaying, {name: string; sha256: string}>();
		const files = [];
		for (const path of paths) {
			const {name, sha256, sound, findings} = await openSound(path);
			if (!sound) {
				files.push({name, seconds: 0, sampleRateHz: 0, playings: 0, findings});
				continue;
			}

			const recording = heardTo(context, hearRecording(sound), name);
			for (const playing of recording.playings) {
				const named = asNamed(playing, nameOf);
				const heard = microphone
					? {...named, lines: named.lines.map(line => withoutMicrophone(line, microphone.curve))}
					: named;
				playings.push(heard);
				from.set(heard, {name, sha256});
			}

			files.push({
				name,
				seconds: recording.seconds,
				sampleRateHz: sound.sampleRateHz,
				playings: recording.playings.length,
				findings: [...findings, ...recording.findings],
			});
		}

		const {rows, rounds} = seatRounds(playings, seats, subGroups(profile));
		const inForce = standingSettings(profile);
		const distances = new Map(
			solve(profile).channels.flatMap(({id, distance}) =>
				distance ? [[id as string, distance] as const] : [],
			),
		);
		const speed = speedOfSound(profile.air).metresPerSecond;
		const expected = expectedLines(profile, distances, inForce, speed);
		const reference = rounds[0];
		const held = reference && againstTape(reference.base.playing.lines, expected, speed);
		const colour =
			microphone || rounds.length === 0 ? [] : [finding('note', 'heard-no-microphone-curve', [])];
		const findings = [...(held?.findings ?? []), ...colour];

		const kept = keptRound(
			rows,
			rounds,
			({playing}) => ({
				file: from.get(playing)!.name,
				sha256: from.get(playing)!.sha256,
				round: flags.proof === true ? 'proof' : 'first',
				...(inForce && {inForce: inForce.id}),
				...(microphone && {microphone: microphone.name}),
				takenAt: context.now().toISOString(),
			}),
			idsFor(profile),
		);
		const responses = kept.responses.map(each => ({
			...each,
			sha256: markOf(new TextEncoder().encode(JSON.stringify(each))),
		})) as RecordedResponse[];
		const heardAll: Profile = {
			...profile,
			recordings: [...(profile.recordings ?? []), ...kept.recordings],
			responses: [...(profile.responses ?? []), ...responses],
		};
		const blend = profileBlend(heardAll);
		const next = withFoundBlend(heardAll, blend);
		const isTaken = flags.take === true && kept.recordings.length > 0;
		if (isTaken) {
			if (place === undefined)
				throw new Trouble('A profile from standard input cannot be written to: name its file.');
			const saved = saveProfile(place, next, mark?.());
			if (saved.kind !== 'saved') throw new Trouble('problems' in saved ? saved.problems : saved.text);
		}

		const shown = {files, rows, rounds, findings, ...(blend && {blend}), isTaken};
		if (flags.json) {
			const {heardJson} = await import('../report/hearing/json.ts');
			out(heardJson(profile, shown, held?.offers));
		} else {
			const {heardLines} = await import('../report/hearing/text.ts');
			out(heardLines(profile, shown, context.columns).join('\n'));
		}

		if (settingsInForce(profile, {inForce: inForce?.id}) === undefined)
			say('No settings are known to stand in the boxes: delays are taken as none.');
		const all = [
			...files.flatMap(file => file.findings),
			...findings,
			...rows.flatMap(row => [...row.playing.findings, ...row.findings]),
		];
		return rounds.length === 0 || hasProblem(all) ? exitCode.no : exitCode.fine;
	},
};

/** Ids r1, r2, … that no recording of the profile has. */
function idsFor(profile: Profile): (row: {readonly index: number}) => string {
	const taken = new Set((profile.recordings ?? []).map(({id}) => id));
	let first = 1;
	while (taken.has(`r${first}`)) first += 1;
	return ({index}) => `r${first + index}`;
}

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
