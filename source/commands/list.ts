import {type ListedProfile, listProfiles} from '../platform/profiles/list.ts';
import {shippedFolder} from '../platform/profiles/shipped.ts';
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

const forScripts = ({path, id, summary, problem}: ListedProfile) => ({
	id,
	path,
	...summary,
	...(problem === undefined ? {} : {problem}),
});

export const command: Command = {
	name: 'list',
	summary: 'List your profiles, newest first, then the demos',
	takes: '',
	examples: [
		['roomtare list', 'shows name, date, room, readings and state of each profile'],
		['roomtare list --json', 'prints the same for scripts'],
	],
	async run(context) {
		const folder = folderOf(context);
		const listed = listProfiles(folder);
		const shipped = shippedFolder();
		const demos = (shipped === undefined ? [] : listProfiles(shipped)).filter(
			({id}) => !listed.some(own => own.id === id),
		);
		if (context.flags.json) {
			context.out(
				JSON.stringify(
					{folder, profiles: listed.map(forScripts), demos: demos.map(forScripts)},
					undefined,
					'\t',
				),
			);
			return exitCode.fine;
		}

		if (listed.length === 0)
			context.say(`There is no profile of yours in ${folder} yet. Begin with “roomtare new”.`);
		const rows = [...listed.map(row), ...demos.map(demo => [...row(demo).slice(0, -1), 'demo'])];
		if (rows.length > 0) context.out(tableLines(columns, rows, context.columns).join('\n'));
		return exitCode.fine;
	},
};
