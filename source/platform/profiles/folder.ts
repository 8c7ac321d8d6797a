import {join, resolve} from 'node:path';
import envPaths from 'env-paths';

/**
The folder that profiles are kept in: the one given, else the one that ROOMTARE_PROFILES names, else `profiles` in the
user's data folder for this program.
*/
export function profilesFolder(
	given?: string,
	environment: Readonly<Record<string, string | undefined>> = process.env,
): string {
	const named = given ?? environment.ROOMTARE_PROFILES;
	if (named !== undefined && named !== '') return resolve(named);
	return join(envPaths('roomtare', {suffix: ''}).data, 'profiles');
}
