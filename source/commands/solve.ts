import {hasProblem} from '../profile/finding.ts';
import type {Profile} from '../profile/types.ts';
import {solutionRemarks} from '../report/allRemarks.ts';
import {saidJson} from '../report/said/json.ts';
import {sayIn} from '../report/said/say.ts';
import {solve} from '../study/calibration/solve.ts';
import {type Command, type CommandContext, type ExitCode, exitCode} from './command.ts';
import {costlyPartsOf} from './costlyParts.ts';
import {forResult, profileFrom} from './profileArgument.ts';

export const command: Command = {
	name: 'solve',
	summary: 'Show what to dial in: distances or delays, trims, crossovers',
	takes: 'PROFILE',
	flags: {
		exact: {type: 'boolean', help: 'Also show the values before rounding to the steps of the boxes'},
		why: {type: 'boolean', help: 'Also show the notes on how each value came about'},
	},
	examples: [
		['roomtare solve cellar-2026', 'the settings of a profile in your folder'],
		['roomtare solve ./cellar.json --exact', 'of a file, with the unrounded values'],
		['roomtare solve cellar-2026 --length ft-in', 'with lengths in feet and inches'],
		['roomtare solve - --json < cellar.json', 'from standard input, for a script'],
	],
	async run(context) {
		return printSolution(context, await profileFrom(context, context.input[0]!));
	},
};

/** Prints the settings of a profile as the context asks, and gives the exit code. */
export async function printSolution(context: CommandContext, asked: Profile): Promise<ExitCode> {
	const profile = forResult(context, asked);
	const solution = solve(profile, costlyPartsOf(profile));
	if (context.flags.json) {
		context.out(saidJson(solution, sayIn(profile)));
	} else {
		const {solutionText} = await import('../report/solution.ts');
		const {lengthUnit = 'm'} = profile;
		const showsExact = context.flags.exact === true;
		const showsWhy = context.flags.why === true;
		const width = context.columns;
		context.out(solutionText(profile, solution, {lengthUnit, width, showsExact, showsWhy}));
	}

	return hasProblem(solutionRemarks(solution)) ? exitCode.no : exitCode.fine;
}
