// Saves one profile again and again, each time with a higher number in its note, and prints the number once the save is done.
import {readFileSync} from 'node:fs';
import {markOf} from '../../source/platform/profiles/read.ts';
import {saveProfile} from '../../source/platform/profiles/save.ts';
import {parseProfile} from '../../source/profile/file/parse.ts';

const path = process.argv[2]!;
const bytes = readFileSync(path);
const parsed = parseProfile(bytes, path);
if (!parsed.ok) throw new Error('The profile to save cannot be read.');
let mark = markOf(bytes);
for (let count = Number(parsed.profile.note ?? 0) + 1; ; count++) {
	const saved = saveProfile(path, {...parsed.profile, note: String(count)}, mark);
	if (saved.kind !== 'saved') throw new Error(`Not saved: ${saved.kind}`);
	mark = saved.mark;
	process.stdout.write(`${count}\n`);
}
