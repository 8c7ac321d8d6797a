import type {Profile} from '../../profile/types.ts';
import {bassPrompts} from './bass/bass.ts';
import {kitPrompts} from './kit/kit.ts';
import {meterPrompts} from './meter/meter.ts';
import {pagePrompt} from './prompt/pagePrompt.ts';
import type {Prompt} from './prompt/prompt.ts';
import {proofPrompts} from './proof/proof.ts';
import {roomPrompts} from './room/room.ts';
import type {Round} from './state.ts';
import {tapePrompts} from './tape/tape.ts';
import {wiringPrompts} from './wiring/wiring.ts';

export type Stop = {
	readonly id: string;
	readonly name: string;
	readonly prompts: (profile: Profile) => readonly Prompt<Profile>[];
};

/** The stops of the walk, in order. */
export const stops: readonly Stop[] = [
	{id: 'room', name: 'Room', prompts: roomPrompts},
	{id: 'kit', name: 'Kit', prompts: kitPrompts},
	{id: 'wiring', name: 'Wiring', prompts: wiringPrompts},
	{id: 'tape', name: 'Tape', prompts: tapePrompts},
	{id: 'meter', name: 'Meter', prompts: meterPrompts},
	{
		id: 'dialIn',
		name: 'Dial-in',
		prompts: () => [
			pagePrompt(
				'dialIn',
				'Type the settings in',
				'One channel at a time. Enter ticks it off when it is typed in, Space takes a tick back, l lists all.',
			),
		],
	},
	{id: 'bass', name: 'Bass', prompts: bassPrompts},
	{id: 'proof', name: 'Proof', prompts: proofPrompts},
	{
		id: 'keep',
		name: 'Keep',
		prompts: () => [pagePrompt('keep', 'Kept', 'What is in the file, and what was put off.')],
	},
];

let latest: {readonly profile: Profile; readonly prompts: readonly Prompt<Profile>[]} | undefined;

/** Every question of the walk for a profile, in the order of the stops. The latest profile's are remembered. */
export function promptsFor(profile: Profile): readonly Prompt<Profile>[] {
	if (latest?.profile !== profile)
		latest = {profile, prompts: stops.flatMap(({prompts}) => prompts(profile))};
	return latest.prompts;
}

/** The walk as a round of questions about a profile. */
export const walkRound: Round<Profile> = {
	prompts: promptsFor,
	skipped: profile => profile.walk?.skipped ?? [],
	withSkipped: (profile, skipped) =>
		skipped.length === 0 && !profile.walk?.skipped
			? profile
			: {...profile, walk: {...profile.walk, skipped: [...skipped]}},
	whenComplete: 'dialIn',
};
