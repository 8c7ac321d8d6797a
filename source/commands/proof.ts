import {proofText} from '../report/proof/text.ts';
import {saidJson} from '../report/said/json.ts';
import {sayIn} from '../report/said/say.ts';
import {prove} from '../study/calibration/proof/prove.ts';
import {type Command, exitCode} from './command.ts';
import {forResult, profileFrom} from './profileArgument.ts';

export const command: Command = {
	name: 'proof',
	summary: 'Hold the second round of readings against what the settings should give',
	takes: 'PROFILE',
	examples: [
		['roomtare proof cellar-2026', 'each reading against its prediction, and what explains a miss'],
		['roomtare proof cellar-2026 && echo met', 'ends with 1 where the proof is missed or not taken yet'],
		['roomtare proof - --json < cellar.json', 'from standard input, for a script'],
	],
	async run(context) {
		const profile = forResult(context, await profileFrom(context, context.input[0]!));
		const result = prove(profile);
		context.out(
			context.flags.json
				? saidJson(result, sayIn(profile))
				: proofText(result, context.columns, sayIn(profile, profile.lengthUnit)),
		);
		return result.verdict === 'met' ? exitCode.fine : exitCode.no;
	},
};
