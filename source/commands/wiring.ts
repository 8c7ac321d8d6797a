import {hasProblem} from '../profile/finding.ts';
import {saidStep} from '../report/said/connecting.ts';
import {saidJson} from '../report/said/json.ts';
import {sayIn} from '../report/said/say.ts';
import {cableLabels} from '../report/wiring/labels.ts';
import {partsWith} from '../study/calibration/parts.ts';
import {solve} from '../study/calibration/solve.ts';
import {standingOf} from '../study/comparison/sheetData.ts';
import {adjustNetwork} from '../study/survey/adjust.ts';
import {wiring} from '../study/wiring/wiring.ts';
import {type Command, exitCode} from './command.ts';
import {forResult, profileFrom} from './profileArgument.ts';

export const command: Command = {
	name: 'wiring',
	summary: 'List cables with lengths, gauges and labels; what to buy; power',
	takes: 'PROFILE',
	flags: {
		labels: {
			type: 'string',
			value: 'FORM',
			choices: ['text', 'html'],
			help: 'Print only the labels for both ends of each cable, to cut out',
		},
	},
	examples: [
		['roomtare wiring cellar-2026', 'cables, what to buy, the order to connect in, what is wrong'],
		['roomtare wiring cellar-2026 --labels html > labels.html', 'labels to print and fold around the cables'],
		['roomtare wiring cellar-2026 --json', 'for a script'],
	],
	async run(context) {
		const profile = forResult(context, await profileFrom(context, context.input[0]!));
		const network = adjustNetwork(profile);
		const solution = solve(profile, partsWith(profile, network));
		const result = wiring(profile, standingOf(network, solution).positions);
		const labels = context.flags.labels as string | undefined;
		if (context.flags.json) {
			context.out(
				saidJson(
					{...result, order: result.order.map(saidStep), labels: cableLabels(result.cables, sayIn(profile))},
					sayIn(profile),
				),
			);
		} else if (labels === undefined) {
			const {wiringText} = await import('../report/wiring/text.ts');
			context.out(wiringText(result, sayIn(profile, profile.lengthUnit), context.columns));
		} else {
			const {labelsHtml, labelsText} = await import('../report/wiring/labels.ts');
			const all = cableLabels(result.cables, sayIn(profile, profile.lengthUnit));
			context.out(
				labels === 'html'
					? labelsHtml(all, `Cable labels: ${profile.name}`)
					: labelsText(all, context.columns),
			);
		}

		return hasProblem(result.remarks) ? exitCode.no : exitCode.fine;
	},
};
