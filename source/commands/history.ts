import {readAllFiles} from '../platform/profiles/readAll.ts';
import {Trouble} from '../platform/trouble.ts';
import type {LengthUnit} from '../profile/types.ts';
import {historyText} from '../report/history/text.ts';
import {weightingMemory} from '../study/calibration/levels/levels.ts';
import type {HistoryEntry} from '../study/comparison/history/historyEntry.ts';
import {readEntry} from '../study/comparison/history/readEntry.ts';
import {roomHistory} from '../study/comparison/history/roomHistory.ts';
import {type Command, type CommandContext, exitCode} from './command.ts';
import {profileFolders} from './profileArgument.ts';

/** Files whose trouble is told one by one. */
const toldAtMost = 5;

/** The profiles of the first folder that holds any: the user's own, else those that come with the program. */
function readEntries(context: CommandContext): HistoryEntry[] {
	const weightingOf = weightingMemory();
	for (const folder of profileFolders(context)) {
		const bad: string[] = [];
		const entries: HistoryEntry[] = [];
		for (const {id, value, problem} of readAllFiles(folder)) {
			const entry = problem === undefined ? readEntry(value, id, weightingOf) : undefined;
			if (entry) entries.push(entry);
			else bad.push(`${id}: ${problem ?? 'not a profile'}. Left out.`);
		}

		if (entries.length + bad.length === 0) continue;
		for (const sentence of bad.slice(0, toldAtMost)) context.say(sentence);
		if (bad.length > toldAtMost)
			context.say(`And ${bad.length - toldAtMost} more files that are no profiles.`);
		return entries;
	}

	return [];
}

export const command: Command = {
	name: 'history',
	summary: 'Show all profiles of a room, oldest to newest, and what drifted',
	takes: '',
	flags: {room: {type: 'string', value: 'NAME', help: 'Only the room of this name'}},
	examples: [
		['roomtare history', 'every room in your folder, each from its first profile to its last'],
		['roomtare history --room "Cellar cinema"', 'one room'],
		['roomtare history --json', 'all figures of all profiles, for a script'],
	],
	async run(context) {
		const entries = readEntries(context);
		const rooms = new Map<string, HistoryEntry[]>();
		for (const entry of entries) {
			const room = entry.room.trim().toLowerCase();
			const list = rooms.get(room);
			if (list) list.push(entry);
			else rooms.set(room, [entry]);
		}

		const wanted = (context.flags.room as string | undefined)?.trim().toLowerCase();
		if (wanted !== undefined && !rooms.has(wanted)) {
			const names = [...rooms.values()].map(([first]) => `“${first!.room}”`);
			const remedy = names.length > 0 ? `There is ${names.join(', ')}.` : 'There is no profile yet.';
			throw new Trouble(`--room: no profile is of a room “${String(context.flags.room)}”. ${remedy}`);
		}

		const histories = [...rooms]
			.filter(([room]) => wanted === undefined || room === wanted)
			.map(([, list]) => roomHistory(list));
		if (context.flags.json) {
			context.out(JSON.stringify({rooms: histories}, undefined, 2));
		} else if (histories.length === 0) {
			context.say('There is no profile yet. Begin with “roomtare new”.');
		} else {
			const options = {
				lengthUnit: (context.flags.length as LengthUnit | undefined) ?? 'm',
				width: context.columns,
			};
			context.out(histories.map(history => historyText(history, options)).join('\n\n'));
		}

		return histories.length > 0 ? exitCode.fine : exitCode.no;
	},
};
