import {Trouble} from '../platform/trouble.ts';
import type {Profile, SettingsSet} from '../profile/types.ts';
import {assembleSheet} from '../report/sheet/assemble.ts';
import {sheetCurves} from '../report/sheet/curveOf.ts';
import {svgPlanOf} from '../report/sheet/planOf.ts';
import {partsWith} from '../study/calibration/parts.ts';
import {solve} from '../study/calibration/solve.ts';
import {sheetData} from '../study/comparison/sheetData.ts';
import {adjustNetwork} from '../study/survey/adjust.ts';
import {type Command, exitCode} from './command.ts';
import {profileFrom} from './profileArgument.ts';

export const command: Command = {
	name: 'sheet',
	summary: 'Print the page for the cabinet door',
	takes: 'PROFILE',
	flags: {
		as: {
			type: 'string',
			value: 'FORM',
			choices: ['text', 'markdown', 'html'],
			default: 'text',
			help: 'Form of the page; html is one file that prints on one page',
		},
		settings: {type: 'string', value: 'ID', help: 'Print this kept set of settings instead of the newest'},
	},
	examples: [
		['roomtare sheet cellar-2026', 'settings, places, cables and cautions as text'],
		['roomtare sheet cellar-2026 --as html > door.html', 'one page with the floor plan, to print'],
		['roomtare sheet cellar-2026 --as markdown', 'for a note file'],
	],
	async run(context) {
		const profile = await profileFrom(context, context.input[0]!);
		const network = adjustNetwork(profile);
		const solution = solve(profile, partsWith(profile, network));
		const set = chosenSet(profile, context.flags.settings as string | undefined);
		const data = sheetData(profile, {network, solution}, set);
		const content = assembleSheet(data);
		const form = context.flags.as as string;
		if (context.flags.json) context.out(JSON.stringify({...content, plan: svgPlanOf(data)}, null, 2));
		else if (form === 'html')
			context.out(
				(await import('../report/sheet/html.ts')).sheetHtml(content, svgPlanOf(data), sheetCurves(data)),
			);
		else if (form === 'markdown')
			context.out((await import('../report/sheet/markdown.ts')).sheetMarkdown(content));
		else context.out((await import('../report/sheet/text.ts')).sheetText(content, context.columns));
		for (const warning of content.warnings) context.say(warning);
		return content.warnings.length > 0 || content.receiver.length === 0 ? exitCode.no : exitCode.fine;
	},
};

function chosenSet(profile: Profile, id: string | undefined): SettingsSet | undefined {
	if (id === undefined) return undefined;
	const set = profile.settings?.find(each => each.id === id);
	if (set) return set;
	const known = (profile.settings ?? []).map(each => each.id).join(', ') || 'none';
	throw new Trouble([`--settings: the profile has no set “${id}”. It has: ${known}.`]);
}
