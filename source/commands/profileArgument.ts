import {findProfile} from '../platform/profiles/find.ts';
import {profilesFolder} from '../platform/profiles/folder.ts';
import {readProfileFile} from '../platform/profiles/read.ts';
import {shippedFolder} from '../platform/profiles/shipped.ts';
import {Trouble} from '../platform/trouble.ts';
import {parseProfile, problemLines} from '../profile/file/parse.ts';
import type {LengthUnit, Profile} from '../profile/types.ts';
import type {CommandContext} from './command.ts';

/** The folder of the user's profiles for this call. */
export function folderOf({flags}: Pick<CommandContext, 'flags'>): string {
	return profilesFolder(flags.profiles as string | undefined);
}

/** Folders that profiles are looked for in: the user's, then those that come with the program. */
export function profileFolders(context: Pick<CommandContext, 'flags'>): string[] {
	const shipped = shippedFolder();
	return [folderOf(context), ...(shipped ? [shipped] : [])];
}

/** Bytes of a profile and where they came from. */
export type ProfileBytes = {
	readonly bytes: Uint8Array;
	/** For words: a path, or “standard input”. */
	readonly place: string;
	/** The file, unless it came from standard input. */
	readonly path?: string;
	/** Mark of the content read, for a save. */
	readonly mark?: () => string;
};

/**
The bytes of a profile named on the command line: a path, a name in one of the folders, or `-` for standard input.

@throws {Trouble} If there is none, or it cannot be read.
*/
export async function bytesOf(context: CommandContext, word: string): Promise<ProfileBytes> {
	if (word === '-') return {bytes: await context.readStandardInput(), place: 'standard input'};
	const path = findProfile(word, profileFolders(context));
	return {...readProfileFile(path), place: path, path};
}

export type ProfileArgument = Omit<ProfileBytes, 'bytes'> & {readonly profile: Profile};

/**
The profile named on the command line, checked, and where it came from.

@throws {Trouble} If it cannot be found, read, or used; every problem in a sentence.
*/
export async function readProfileArgument(context: CommandContext, word: string): Promise<ProfileArgument> {
	const {bytes, ...rest} = await bytesOf(context, word);
	const parsed = parseProfile(bytes, rest.place);
	if (parsed.ok) return {...rest, profile: parsed.profile};
	throw new Trouble([
		`${rest.place} cannot be used:`,
		...problemLines(parsed.problems).map(line => `  ${line}`),
	]);
}

/**
The profile that a result is computed from: for scripts in metres, so that the sentences in it are the same bytes in every
unit; for readers as it is.
*/
export function forResult({flags}: Pick<CommandContext, 'flags'>, profile: Profile): Profile {
	return flags.json || flags.as === 'json' ? {...profile, lengthUnit: 'm'} : profile;
}

/**
The profile alone, to show results of. A unit asked for by `--length` takes the place of its own, so that every text
about it is in that unit.
*/
export async function profileFrom(context: CommandContext, word: string): Promise<Profile> {
	const {profile} = await readProfileArgument(context, word);
	const lengthUnit = context.flags.length as LengthUnit | undefined;
	return lengthUnit ? {...profile, lengthUnit} : profile;
}
