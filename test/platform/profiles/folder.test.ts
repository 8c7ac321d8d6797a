import {resolve} from 'node:path';
import {expect, test} from 'vitest';
import {profilesFolder} from '../../../source/platform/profiles/folder.ts';

test('profilesFolder takes the flag, then the environment, then the data folder of the user', () => {
	expect(profilesFolder('given', {ROOMTARE_PROFILES: '/named'})).toBe(resolve('given'));
	expect(profilesFolder(undefined, {ROOMTARE_PROFILES: '/named'})).toBe('/named');
	expect(profilesFolder(undefined, {ROOMTARE_PROFILES: ''})).toMatch(/roomtare.*profiles$/);
});
