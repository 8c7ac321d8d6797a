import {outputFolder} from '../platform/outputFolder.ts';
import {referenceSeat} from '../profile/ask/seats.ts';
import {isLfe} from '../profile/channels.ts';
import type {Profile} from '../profile/types.ts';
import {roundSheetLines} from '../report/hearing/roundSheet.ts';
import {onePlayingOdds} from '../report/said/recorded.ts';
import {signalLines} from '../report/signals.ts';
import {seededRandom} from '../science/signal/seededRandom.ts';
import {waveFile} from '../science/signal/waveFile.ts';
import {oddsOfRecording} from '../study/hearing/odds.ts';
import type {RoundSize} from '../study/hearing/roundCode.ts';
import {plannedPlayings, subGroups} from '../study/hearing/visit.ts';
import {planSignals} from '../study/playing/plan.ts';
import {signalRenderer} from '../study/playing/render.ts';
import {type Command, type CommandContext, type ExitCode, exitCode} from './command.ts';
import {profileFrom} from './profileArgument.ts';
import {loopName, writeRoundFile} from './writeRound.ts';

export const command: Command = {
	name: 'signals',
	summary: 'Write test signals as WAV files: noise, tones, channel count',
	takes: 'DIR',
	flags: {
		profile: {
			type: 'string',
			value: 'PROFILE',
			help: 'Also write files in the channel order of this profile, and tones around its crossovers',
		},
		level: {
			type: 'string',
			value: 'DBFS',
			choices: ['-20', '-30'],
			default: '-30',
			help: 'RMS level; 0 dBFS is the RMS of a full-scale sine',
		},
		round: {
			type: 'boolean',
			help: 'Write the file of a recorded round instead, with how to play and record it',
		},
		size: {
			type: 'string',
			value: 'SIZE',
			choices: ['two', 'all', 'bass'],
			default: 'two',
			help: 'Of the round: front left and right, all channels of a multichannel player, or the fronts’ bass alone',
		},
		force: {type: 'boolean', help: 'Replace files that exist'},
	},
	examples: [
		['roomtare signals ./tones', 'noise and tones in mono, about 80 Hz'],
		[
			'roomtare signals ./tones --profile cellar-2026',
			'also each channel by itself, in the order of the layout',
		],
		['roomtare signals ./tones --level -20 --force', '10 dB louder, replacing what is there'],
		['roomtare signals ./round --round --profile cellar-2026', 'to play once and record at each seat'],
	],
	async run(context) {
		const {flags, input, out, say} = context;
		const profile = typeof flags.profile === 'string' ? await profileFrom(context, flags.profile) : undefined;
		const folder = input[0]!;
		if (flags.round === true) return writeRound(context, profile, folder);
		const plan = planSignals(profile, Number(flags.level));
		for (const caution of plan.cautions) say(caution);
		const write = outputFolder(
			folder,
			plan.files.map(({file}) => file),
			flags.force === true,
		);
		const render = signalRenderer(plan, seededRandom(1));
		let bytes: Uint8Array<ArrayBuffer> | undefined;
		for (const item of plan.files) {
			bytes = waveFile(render(item), bytes);
			write(item.file, bytes);
		}

		out(
			flags.json
				? JSON.stringify({folder, ...plan}, null, 2)
				: signalLines(plan, folder, context.columns).join('\n'),
		);
		return exitCode.fine;
	},
};

/** Without a profile there are two channels, and nobody to say what the subs hang on. */
const anyTwo = {channels: [{id: 'FL'}, {id: 'FR'}]} as const;

function writeRound(context: CommandContext, profile: Profile | undefined, folder: string): ExitCode {
	const {flags, out} = context;
	const size = profile ? (flags.size as RoundSize) : 'two';
	const file = writeRoundFile(
		profile ?? (anyTwo as unknown as Pick<Profile, 'channels'>),
		size,
		folder,
		flags.force === true,
	);
	const groups = profile ? subGroups(profile) : [];
	const seats = profile
		? [referenceSeat(profile), ...profile.seats.filter(seat => seat !== referenceSeat(profile))].map(
				({id}) => id,
			)
		: ['seat'];
	const hasLfe = file.round.channels.some(isLfe);
	const visit = {
		file,
		loop: loopName,
		groups,
		playings: plannedPlayings(seats, groups),
		...(hasLfe &&
			groups.length > 0 && {firstAlone: onePlayingOdds(oddsOfRecording, file.round.channels.includes('FC'))}),
	};
	out(
		flags.json
			? JSON.stringify({folder, ...visit}, null, 2)
			: roundSheetLines(profile ?? {seats: []}, visit, folder, context.columns).join('\n'),
	);
	return exitCode.fine;
}
