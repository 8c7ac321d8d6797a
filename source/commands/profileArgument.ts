import {findProfile} from '../platform/profiles/find.ts';
import {profilesFolder} from '../platform/profiles/folder.ts';
import {readProfileFile} from '../platform/profiles/read.ts';
import {shippedFolder} from '../platform/profiles/shipped.ts';
import {Trouble} from '../platform/trouble.ts';
import {parseProfile, problemLines} from '../profile/parse.ts';
import type {LengthUnit, Profile} from '../profile/types.ts';
import type {CommandContext} from './command.ts';

/** Folders that profiles are looked for in: the user's, then those that come with the program. */
export function profileFolders({flags}: Pick<CommandContext, 'flags'>): string[] {
	const shipped = shippedFolder();
	return [profilesFolder(flags.profiles as string | undefined), ...(shipped ? [shipped] : [])];
}

/**
The bytes of a profile named on the command line: a path, a name in one of the folders, or `-` for standard input.

@throws {Trouble} If there is none, or it cannot be read.
*/
export async function bytesOf(
	context: CommandContext,
	word: string,
): Promise<{readonly bytes: Uint8Array; readonly place: string}> {
	if (word === '-') return {bytes: await context.readStandardInput(), place: 'standard input'};
	const path = findProfile(word, profileFolders(context));
	return {bytes: readProfileFile(path).bytes, place: path};
}

/**
The profile named on the command line, checked.

@throws {Trouble} If it cannot be found, read, or used; every problem in a sentence.
*/
export async function profileFrom(context: CommandContext, word: string): Promise<Profile> {
	const {bytes, place} = await bytesOf(context, word);
	const parsed = parseProfile(bytes, place);
	if (parsed.ok) return parsed.profile;
	throw new Trouble([`${place} cannot be used:`, ...problemLines(parsed.problems).map(line => `  ${line}`)]);
}

/** Unit that lengths are shown in: the one asked for, else the profile's, else metres. */
export function lengthUnitOf({flags}: Pick<CommandContext, 'flags'>, profile: Profile): LengthUnit {
	return (flags.length as LengthUnit | undefined) ?? profile.lengthUnit ?? 'm';
}
