import {parseProfile, problemLines} from '../profile/file/parse.ts';
import {hasProblem} from '../profile/finding.ts';
import type {LengthUnit} from '../profile/types.ts';
import {solutionRemarks} from '../report/allRemarks.ts';
import {remarkLines} from '../report/remarks.ts';
import {saidJson} from '../report/said/json.ts';
import {distinct, type Sayable} from '../report/said/said.ts';
import {sayIn} from '../report/said/say.ts';
import {wrap} from '../report/wrap.ts';
import {partsWith} from '../study/calibration/parts.ts';
import {solve} from '../study/calibration/solve.ts';
import {adjustNetwork} from '../study/survey/adjust.ts';
import {type Command, exitCode} from './command.ts';
import {bytesOf, forResult} from './profileArgument.ts';

export const command: Command = {
	name: 'check',
	summary: 'Check a profile: the file, its readings, what is missing',
	takes: 'PROFILE',
	examples: [
		['roomtare check cellar-2026', 'every fault of the file at once, then readings that cannot be right'],
		['roomtare check - < cellar.json', 'the same from standard input'],
		[
			'roomtare check cellar-2026 --json',
			'for scripts; 0 sound, 1 a problem in the readings, 2 a file that cannot be used',
		],
	],
	async run(context) {
		const {bytes, place} = await bytesOf(context, context.input[0]!);
		const parsed = parseProfile(bytes, place);
		if (!parsed.ok) {
			if (context.flags.json)
				context.out(JSON.stringify({place, isUsable: false, problems: parsed.problems}, null, 2));
			context.say(`${place} cannot be used:`);
			for (const line of problemLines(parsed.problems, 1000)) context.say(`  ${line}`);
			return exitCode.trouble;
		}

		const lengthUnit = context.flags.length as LengthUnit | undefined;
		const profile = forResult(context, {...parsed.profile, ...(lengthUnit && {lengthUnit})});
		const network = adjustNetwork(profile);
		const remarks = distinct<Sayable>([
			...solutionRemarks(solve(profile, partsWith(profile, network))),
			...network.remarks,
		]);
		const isSound = !hasProblem(remarks);
		if (context.flags.json) {
			context.out(saidJson({place, isUsable: true, isSound, remarks}, sayIn(profile)));
		} else {
			const {tape = [], meter = []} = profile;
			const worthSaying = remarks.filter(({kind}) => kind !== 'note');
			const lines = [
				...wrap(
					`${profile.name}, ${profile.date}: ${tape.length} tape readings, ${meter.length} meter readings.`,
					context.columns,
				),
				soundnessText(isSound, tape.length + meter.length),
				...remarkLines(worthSaying, context.columns, sayIn(profile, profile.lengthUnit)),
			];
			context.out(lines.join('\n'));
		}

		return isSound ? exitCode.fine : exitCode.no;
	},
};

function soundnessText(isSound: boolean, readings: number): string {
	if (readings === 0) return 'The file is in order; it holds no reading yet.';
	return isSound
		? 'The file is in order, and no reading is impossible.'
		: 'The file is in order; the readings are not.';
}
