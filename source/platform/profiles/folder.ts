import {userInfo} from 'node:os';
import {isAbsolute, join, resolve} from 'node:path';
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
	const data = envPaths('roomtare', {suffix: ''}).data;
	if (isAbsolute(data)) return join(data, 'profiles');
	// HOME is empty, or XDG_DATA_HOME relative, which its specification has ignored: never the folder one happens to be in.
	const {homedir} = userInfo();
	return environment.XDG_DATA_HOME && !isAbsolute(environment.XDG_DATA_HOME)
		? join(homedir, '.local/share/roomtare/profiles')
		: join(homedir, data, 'profiles');
}
