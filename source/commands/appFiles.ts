import type {Lock} from '../platform/lock.ts';
import {copyProfileFile, untouchedCopy} from '../platform/profiles/copyFile.ts';
import {freePath} from '../platform/profiles/freePath.ts';
import {holdProfile} from '../platform/profiles/hold.ts';
import {listProfiles} from '../platform/profiles/list.ts';
import {readProfileFile} from '../platform/profiles/read.ts';
import {removeProfileFile, restoreProfileFile} from '../platform/profiles/remove.ts';
import {createProfileFile, saveProfile} from '../platform/profiles/save.ts';
import {shippedFolder} from '../platform/profiles/shipped.ts';
import {writeBeside} from '../platform/profiles/writeBeside.ts';
import {roomyFolder} from '../platform/roomyFolder.ts';
import {Trouble} from '../platform/trouble.ts';
import {parseProfile, problemLines} from '../profile/file/parse.ts';
import type {Profile} from '../profile/types.ts';
import {visibleText} from '../profile/visibleText.ts';
import type {Created, Files, HeldFile, Listed} from '../ui/files.ts';
import {writeSignals} from './writeSignals.ts';

/** The user's files as the app sees them. What the disk refuses comes back as words; faults of the program are thrown. */
export function appFiles(folder: string, now: () => Date): Files {
	const held = new Map<string, Lock & {readonly kind: 'held-here'}>();
	return {
		list: () => [...listedIn(folder, false), ...listedIn(shippedFolder(), true)],
		load: file =>
			inWords(() => {
				const {bytes, mark} = readProfileFile(file);
				const parsed = parseProfile(bytes, file);
				if (parsed.ok) return {ok: true, profile: parsed.profile, mark: mark()};
				const lines = [`${file} cannot be used:`, ...problemLines(parsed.problems, 5)];
				return {ok: false, text: visibleText(lines.join('\n'))};
			}),
		save: (file, profile, mark, isForced = false) => {
			const saved = inWords(() => saveProfile(file, profile, mark, {isForced}));
			if ('ok' in saved) return {...saved, why: 'failed'};
			switch (saved.kind) {
				case 'saved':
					return {
						ok: true,
						mark: saved.mark,
						...(saved.otherPath !== undefined && {otherFile: saved.otherPath}),
					};
				case 'unsound':
					return {ok: false, why: 'unsound', text: visibleText(saved.problems.join('\n'))};
				case 'held-elsewhere':
					return {ok: false, why: 'busy', text: visibleText(saved.text)};
				case 'changed-elsewhere':
					return {ok: false, why: 'changed', text: visibleText(saved.text)};
			}
		},
		create: profile => inWords(() => createIn(folder, profile)),
		rescue: profile => {
			const here = inWords(() => createIn(folder, profile));
			return here.ok ? here : inWords(() => createIn(roomyFolder(), profile));
		},
		writeBeside: (file, ending, text) => inWords(() => ({ok: true, path: writeBeside(file, ending, text)})),
		remove: file => inWords(() => ({ok: true, ...removeProfileFile(file)})),
		restore: removed =>
			inWords(() => {
				const file = restoreProfileFile(removed);
				return {ok: true, file, mark: readProfileFile(file).mark()};
			}),
		writeSignals: (file, profile) => inWords(() => ({ok: true, path: writeSignals(file, profile)})),
		copy: file =>
			inWords(() => {
				const {path, mark} = untouchedCopy(file, folder) ?? copyProfileFile(file, folder);
				return {ok: true, file: path, mark};
			}),
		hold(file, isForced) {
			if (held.has(file)) return {ok: true};
			const lock = inWords(() => holdProfile(file, now(), isForced));
			// Where no mark can be written, such as in a folder for reading only, the first save tells.
			if ('ok' in lock) return {ok: true};
			if (lock.kind === 'held-elsewhere') return {ok: false, text: visibleText(lock.text)} satisfies HeldFile;
			held.set(file, lock);
			return {ok: true};
		},
		release(file) {
			held.get(file)?.release();
			held.delete(file);
		},
	};
}

/** A new file in a folder. Most names carry their year already; the file's name then needs no day. */
function createIn(folder: string, profile: Profile): Created & {readonly ok: true} {
	const {name, date} = profile;
	const file = freePath(folder, name.includes(date.slice(0, 4)) ? name : `${name} ${date}`);
	return {ok: true, file, ...createProfileFile(file, profile)};
}

function listedIn(folder: string | undefined, isShipped: boolean): Listed[] {
	if (folder === undefined) return [];
	return listProfiles(folder).map(({path, id, summary, problem}) => ({
		file: path,
		name: visibleText(summary?.name ?? id),
		date: summary?.date ?? '',
		isShipped,
		...(problem !== undefined && {problem}),
	}));
}

function inWords<Result>(action: () => Result): Result | {readonly ok: false; readonly text: string} {
	try {
		return action();
	} catch (error) {
		if (error instanceof Trouble) return {ok: false, text: visibleText(error.problems.join('\n'))};
		throw error;
	}
}
