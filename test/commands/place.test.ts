import {expect, test} from 'vitest';
import type {CommandContext} from '../../source/commands/command.ts';
import {command} from '../../source/commands/place.ts';
import type {Profile} from '../../source/profile/types.ts';
import {ear, placedAt, screenAhead, towards} from '../study/survey/exampleNetwork.ts';
import {bareProfile} from '../study/survey/room.ts';

const places = {
	sofa: ear,
	screen: screenAhead,
	FL: towards(30, 0, 3),
	FR: towards(-30, 0, 3),
	FC: towards(0, -2, 3.3),
	LS: towards(110, 3, 2.2),
	RS: towards(-110, 3, 2.2),
};

async function run(profile: Profile, flags: Readonly<Record<string, unknown>> = {}, columns = 80) {
	let printed = '';
	const context: CommandContext = {
		input: ['-'],
		flags,
		out: text => {
			printed += `${text}\n`;
		},
		say: () => {},
		isTerminal: false,
		columns,
		readStandardInput: async () => new TextEncoder().encode(JSON.stringify(profile)),
		now: () => new Date(0),
	};
	const code = await command.run(context);
	return {code, printed};
}

test('place says what to measure first when nothing is measured', async () => {
	const {code, printed} = await run(bareProfile());
	expect(code).toBe(1);
	expect(printed).toContain('No tape readings yet.');
});

test('place is content with a layout in its ranges', async () => {
	const {code, printed} = await run(placedAt(places).profile);
	expect(code).toBe(0);
	for (const words of ['Layout 5.1.', 'Places', 'Angles at Sofa middle', 'Aiming', 'From above'])
		expect(printed).toContain(words);
	expect(printed).not.toContain('Corrections');
});

test('place stays within 80 columns and within 60', async () => {
	for (const columns of [80, 60]) {
		const {printed} = await run({...placedAt(places).profile, screen: {widthMetres: 2}}, {next: 3}, columns);
		for (const line of printed.split('\n')) expect([...line].length).toBeLessThanOrEqual(columns);
	}
});

test('place answers no, with a correction, when a channel is outside its range', async () => {
	const {profile} = placedAt({...places, LS: towards(90, 3, 2)});
	// Every length twice: a slip in one of them would show.
	const {code, printed} = await run({...profile, tape: [...profile.tape!, ...profile.tape!]});
	expect(code).toBe(1);
	expect(printed).toContain('Corrections, smallest first');
	expect(printed).toMatch(/Left surround: azimuth 90°, 10° outside the range 100° to 120°/);
});

test('place answers no to nothing that a slip of the tape may explain, and says so', async () => {
	const {code, printed} = await run(placedAt({...places, LS: towards(90, 3, 2)}).profile);
	expect(code).toBe(0);
	expect(printed.replaceAll(/\s+/g, ' ')).toContain(
		'Not checked yet: a slip of a foot in a reading would not show.',
	);
});

test('place answers no when a reading cannot be right, and prints the data all the same', async () => {
	const {profile} = placedAt(places);
	const tape = [...profile.tape!, {from: 'FL', to: 'sofa', metres: 3.3048}];
	const {code, printed} = await run({...profile, tape}, {json: true});
	expect(code).toBe(1);
	const {network, placement} = JSON.parse(printed);
	expect(network.suspects[0].index).toBe(tape.length - 1);
	expect(network.points).toHaveLength(7);
	expect(placement.judgements).toHaveLength(5);
});

test('place --move shows what a move would do and leaves the rest', async () => {
	const {profile} = placedAt({...places, LS: towards(90, 3, 2)});
	const before = JSON.parse((await run(profile, {json: true})).printed);
	const [way] = before.placement.corrections;
	const move = `LS=${way.by.map((value: number) => value.toFixed(4)).join(',')}`;
	const after = await run(profile, {json: true, move: [move]});
	expect(after.code).toBe(0);
	expect(JSON.parse(after.printed).placement.corrections).toEqual([]);
});

test('place --move answers no when the thing would be outside the room', async () => {
	const {code, printed} = await run(placedAt(places).profile, {move: ['FL=left:2']});
	expect(code).toBe(1);
	expect(printed).toContain('Front left: this place is outside the room.');
});

test('place --move explains a move that it cannot read', async () => {
	await expect(run(placedAt(places).profile, {move: ['FL=sideways:1']})).rejects.toThrow(
		'no direction with a length',
	);
	await expect(run(placedAt(places).profile, {move: ['lamp=left:1']})).rejects.toThrow(
		'there is no such thing here',
	);
});

test('place --words tells the plan without drawing it', async () => {
	const {printed} = await run(placedAt(places).profile, {words: true});
	expect(printed).not.toMatch(/[\u2801-\u28ff]/);
	expect(printed).toContain('Front left');
});

test('place shows lengths in feet and inches when the profile does', async () => {
	const {printed} = await run({...placedAt(places).profile, lengthUnit: 'ft-in'});
	expect(printed).toMatch(/9′ 10/);
	expect(printed).not.toMatch(/\d m\b/);
});
