import {outputFolder} from '../platform/outputFolder.ts';
import {signalLines} from '../report/signals.ts';
import {seededRandom} from '../science/signal/seededRandom.ts';
import {waveFile} from '../science/signal/waveFile.ts';
import {planSignals} from '../study/playing/plan.ts';
import {signalRenderer} from '../study/playing/render.ts';
import {type Command, exitCode} from './command.ts';
import {profileFrom} from './profileArgument.ts';

export const command: Command = {
	name: 'signals',
	summary: 'Write test signals as WAV files: noise, tones, channel count',
	takes: 'DIR',
	flags: {
		profile: {
			type: 'string',
			value: 'PROFILE',
			help: 'Also write files in the channel order of this profile, and tones about its crossovers',
		},
		level: {
			type: 'string',
			value: 'DBFS',
			choices: ['-20', '-30'],
			default: '-30',
			help: 'RMS level; 0 dBFS is the RMS of a full-scale sine',
		},
		force: {type: 'boolean', help: 'Replace files that exist'},
	},
	examples: [
		['roomtare signals ./tones', 'noise and tones in mono, about 80 Hz'],
		[
			'roomtare signals ./tones --profile attic-2026',
			'also each channel by itself, in the order of the layout',
		],
		['roomtare signals ./tones --level -20 --force', '10 dB louder, replacing what is there'],
	],
	async run(context) {
		const {flags, input, out, say} = context;
		const profile = typeof flags.profile === 'string' ? await profileFrom(context, flags.profile) : undefined;
		const plan = planSignals(profile, Number(flags.level));
		const folder = input[0]!;
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
