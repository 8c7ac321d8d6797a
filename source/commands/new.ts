import {newProfilePath} from '../platform/profiles/newPath.ts';
import {createProfileFile} from '../platform/profiles/save.ts';
import {Trouble} from '../platform/trouble.ts';
import {genericBassProcessorNames} from '../profile/generic/bassProcessors.ts';
import {type LayoutName, layoutNames, readLayout} from '../profile/generic/layouts.ts';
import {type NewProfile, newProfile} from '../profile/generic/newProfile.ts';
import {genericReceiverNames} from '../profile/generic/receivers.ts';
import {lengthUnits} from '../profile/units/lengthUnit.ts';
import {visibleText} from '../profile/visibleText.ts';
import {type Command, type CommandContext, exitCode} from './command.ts';
import {dateFlag, dateOf} from './dateFlag.ts';
import {folderOf} from './profileArgument.ts';

const flags = {
	name: {type: 'string', value: 'NAME', help: 'Name of the profile; the file is named after it'},
	date: dateFlag,
	layout: {
		type: 'string',
		value: 'LAYOUT',
		choices: layoutNames,
		takesOthers: true,
		default: '5.1',
		help: 'Speakers at ear height, subs and overhead ones, also with 2 to 4 subs as in 5.2.4',
	},
	unit: {
		type: 'string',
		value: 'UNIT',
		choices: lengthUnits,
		default: 'm',
		help: 'Unit that lengths are typed and shown in',
	},
	receiver: {
		type: 'string',
		value: 'KIND',
		choices: genericReceiverNames,
		help: 'What the receiver takes',
	},
	processor: {
		type: 'string',
		value: 'KIND',
		choices: genericBassProcessorNames,
		help: 'Bass processor before the subs',
	},
	subs: {
		type: 'number',
		value: 'COUNT',
		help: 'Number of subwoofers; one where the layout has a low-frequency channel',
	},
	seats: {
		type: 'number',
		value: 'COUNT',
		default: 1,
		help: 'Number of seats; the first is the reference seat',
	},
	room: {type: 'string', value: 'NAME', help: 'Name of the room; the profile’s name where not given'},
} as const;

function wantedOf(context: CommandContext): NewProfile {
	const given = context.flags;
	if (typeof given.name !== 'string')
		throw new Trouble('new: --name NAME is missing. Give the profile a name.');
	for (const key of ['name', 'room'] as const) {
		const text = given[key];
		if (typeof text === 'string' && (visibleText(text) !== text || /[\n\t]/.test(text) || text.length > 120))
			throw new Trouble(`new: --${key} takes one line of up to 120 characters, without control characters.`);
	}

	const layout = layoutNames.find(name => name === given.layout);
	const withSubs = readLayout(String(given.layout));
	if (!layout && !withSubs)
		throw new Trouble(
			`new: --layout: “${visibleText(String(given.layout))}” is no layout. Expected one of ${layoutNames.join(', ')}, or one of these with 2 to 4 as the middle figure for as many subs.`,
		);
	if (withSubs && given.subs !== undefined && given.subs !== withSubs.subs)
		throw new Trouble(
			`new: --layout ${given.layout} has ${withSubs.subs} subs, but --subs says ${given.subs}. Leave one of them out.`,
		);
	const subs = (given.subs as number | undefined) ?? withSubs?.subs;
	return {
		name: given.name,
		date: dateOf(context),
		layout: (layout ?? withSubs?.layout) as LayoutName,
		lengthUnit: given.unit as NonNullable<NewProfile['lengthUnit']>,
		seats: given.seats as number,
		...(given.receiver === undefined
			? {}
			: {receiver: given.receiver as NonNullable<NewProfile['receiver']>}),
		...(given.processor === undefined
			? {}
			: {bassProcessor: given.processor as NonNullable<NewProfile['bassProcessor']>}),
		...(subs === undefined ? {} : {subs}),
		...(given.room === undefined ? {} : {roomName: String(given.room)}),
	};
}

export const command: Command = {
	name: 'new',
	summary: 'Begin a profile for a room',
	takes: '',
	flags,
	examples: [
		[
			'roomtare new --name "Family room" --layout 5.2.4 --receiver fine-metric',
			'begins a profile with ten channels and two subs',
		],
		['roomtare new --name Den --layout 2.1 --unit ft-in', 'begins one measured in feet and inches'],
	],
	async run(context) {
		const wanted = wantedOf(context);
		const path = newProfilePath(folderOf(context), wanted.name);
		let profile: ReturnType<typeof newProfile>;
		try {
			profile = newProfile(wanted);
		} catch (error) {
			throw error instanceof RangeError ? new Trouble(`new: ${error.message}.`) : error;
		}

		createProfileFile(path, profile);
		if (context.flags.json) context.out(JSON.stringify({path, profile}, undefined, '\t'));
		else context.out(path);
		context.say(`Began “${wanted.name}”. “roomtare walk” leads through the measurements.`);
		return exitCode.fine;
	},
};
