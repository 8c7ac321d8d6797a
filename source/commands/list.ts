import {type ListedProfile, listProfiles} from '../platform/profiles/list.ts';
import {tableLines} from '../report/table.ts';
import {type Command, exitCode} from './command.ts';
import {folderOf} from './profileArgument.ts';

const columns = [
	{title: 'profile', importance: 10, leastCells: 12},
	{title: 'name', importance: 6, leastCells: 12},
	{title: 'date', importance: 9},
	{title: 'room', importance: 4, leastCells: 8},
	{title: 'tape', importance: 3, align: 'right'},
	{title: 'meter', importance: 2, align: 'right'},
	{title: 'state', importance: 8},
] as const;

function row({id, summary, problem}: ListedProfile): string[] {
	if (!summary) return [id, '', '', '', '', '', problem ?? ''];
	const {name, date, room, tapeReadings, meterReadings, state} = summary;
	return [id, name, date, room, String(tapeReadings), String(meterReadings), state];
}

export const command: Command = {
	name: 'list',
	summary: 'List your profiles, newest first',
	takes: '',
	examples: [
		['roomtare list', 'shows name, date, room, readings and state of each profile'],
		['roomtare list --json', 'prints the same for scripts'],
	],
	async run(context) {
		const folder = folderOf(context);
		const listed = listProfiles(folder);
		if (context.flags.json) {
			const profiles = listed.map(({path, id, summary, problem}) => ({
				id,
				path,
				...summary,
				...(problem === undefined ? {} : {problem}),
			}));
			context.out(JSON.stringify({folder, profiles}, undefined, '\t'));
			return exitCode.fine;
		}

		if (listed.length === 0) {
			context.say(`There is no profile in ${folder} yet. Begin with “roomtare new”.`);
			return exitCode.fine;
		}

		context.out(tableLines(columns, listed.map(row), context.columns).join('\n'));
		return exitCode.fine;
	},
};
