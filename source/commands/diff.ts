import {Trouble} from '../platform/trouble.ts';
import type {LengthUnit, Profile} from '../profile/types.ts';
import {movedOnPlan} from '../report/diff/movedOnPlan.ts';
import {diffMarkdown, diffText} from '../report/diff/text.ts';
import {saidJson} from '../report/said/json.ts';
import {sayIn} from '../report/said/say.ts';
import {diffProfiles} from '../study/comparison/diff/diffProfiles.ts';
import type {ProfileDiff} from '../study/comparison/diff/profileDiff.ts';
import {solveForDiff} from '../study/comparison/diff/solveForDiff.ts';
import type {ComparedPlans} from '../study/placement/comparePlans.ts';
import {adjustNetwork} from '../study/survey/adjust.ts';
import type {NetworkResult} from '../study/survey/result.ts';
import {type Command, type CommandContext, exitCode} from './command.ts';
import {forResult, readProfileArgument} from './profileArgument.ts';

type Form = 'text' | 'markdown' | 'json';
type SurveyedProfile = {readonly profile: Profile; readonly network: NetworkResult};
type TwoProfiles = {
	readonly diff: ProfileDiff;
	readonly older: SurveyedProfile;
	readonly newer: SurveyedProfile;
};

function optionsFor({flags, columns}: CommandContext, newer: Profile) {
	const timing = newer.receiver?.timing;
	const lengthUnit = (flags.length as LengthUnit | undefined) ?? newer.lengthUnit ?? 'm';
	return {
		lengthUnit,
		say: sayIn(newer, lengthUnit),
		isFull: flags.full === true,
		width: columns,
		...(timing?.kind === 'distance' && {entry: timing}),
	};
}

/** The comparisons to show: each profile with the next, and for more than two the first with the last. */
function compare(profiles: readonly Profile[]): TwoProfiles[] {
	const solved = profiles.map(profile => {
		const network = adjustNetwork(profile);
		return {profile, network, solution: solveForDiff(profile, network)};
	});
	const pairs = solved.slice(1).map((newer, index) => [solved[index]!, newer] as const);
	if (solved.length > 2) pairs.push([solved[0]!, solved.at(-1)!]);
	return pairs.map(([older, newer]) => ({
		diff: diffProfiles(older, newer),
		older,
		newer,
	}));
}

/** The report on one comparison; what draws is loaded only where it is asked for. */
async function textOf(
	{diff, older, newer}: TwoProfiles,
	form: Form,
	context: CommandContext,
): Promise<string> {
	const plain = optionsFor(context, newer.profile);
	const plans = await plansOf({diff, older, newer});
	const both = {older: sayIn(older.profile, plain.lengthUnit), newer: plain.say};
	const moved = movedOnPlan(plans, both);
	// With the plans it stands below them.
	const options = {...plain, moved: moved && context.flags.plan ? {...moved, lines: []} : moved};
	const text = form === 'markdown' ? diffMarkdown(diff, options) : diffText(diff, options);
	if (!context.flags.plan) return text;
	const {plansMarkdown, plansText} = await import('../report/diff/plans.ts');
	const shown =
		form === 'markdown' ? plansMarkdown(diff, plans, both) : plansText(diff, plans, context.columns, both);
	return `${text}\n\n${shown}`;
}

async function plansOf({diff, older, newer}: TwoProfiles): Promise<ComparedPlans> {
	const {comparePlans} = await import('../study/placement/comparePlans.ts');
	const drawn = ({profile: {screen}, network}: SurveyedProfile) => ({network, screen});
	return comparePlans(drawn(older), drawn(newer), diff);
}

export const command: Command = {
	name: 'diff',
	summary: 'Compare profiles: what moved, what is set differently, and why',
	takes: 'OLD NEW...',
	flags: {
		full: {type: 'boolean', help: 'Show every change and every part of it'},
		plan: {type: 'boolean', help: 'Add the floor plans before and after, and what moved how far'},
		as: {
			type: 'string',
			value: 'FORM',
			choices: ['text', 'markdown', 'json'],
			help: 'Print as text, Markdown or JSON',
		},
	},
	examples: [
		['roomtare diff cellar-2025 cellar-2026', 'what changed between the two, larger changes first'],
		['roomtare diff cellar-2025 cellar-2026 --full', 'every reading, and every cause of every setting'],
		['roomtare diff cellar-2025 cellar-2026 --plan', 'both floor plans at one scale, and what moved how far'],
		['roomtare diff 2024 2025 2026 --as markdown', 'each year with the next, then the first with the last'],
		['roomtare diff old.json - --json < new.json', 'one of them from standard input, for a script'],
	],
	async run(context) {
		const {input, flags} = context;
		if (input.filter(word => word === '-').length > 1) {
			throw new Trouble('diff: “-” stands twice. Standard input can be only one of the profiles.');
		}

		const read = [];
		for (const word of input) read.push(await readProfileArgument(context, word));
		for (const [index, {path, place}] of read.entries()) {
			if (path !== undefined && read.findIndex(other => other.path === path) < index) {
				context.say(`${place} is given twice. A profile does not differ from itself.`);
			}
		}

		const compared = compare(read.map(({profile}) => forResult(context, profile)));
		const form: Form = flags.json ? 'json' : ((flags.as as Form | undefined) ?? 'text');
		if (form === 'json') {
			const diffs = [];
			for (const one of compared)
				diffs.push(context.flags.plan ? {...one.diff, plan: (await plansOf(one)).change} : one.diff);
			const result = diffs.length === 1 ? diffs[0] : {steps: diffs.slice(0, -1), overall: diffs.at(-1)};
			context.out(saidJson(result, sayIn(compared.at(-1)!.newer.profile)));
		} else {
			const texts = [];
			for (const one of compared) texts.push(await textOf(one, form, context));
			context.out(texts.join('\n\n'));
		}

		return compared.every(({diff}) => diff.isSame) ? exitCode.fine : exitCode.no;
	},
};
