import type {Profile} from '../../source/profile/types.ts';
import type {Created, Files, Listed, Saved} from '../../source/ui/files.ts';

/** Files in memory, with the refusals that a disk can give. */
export type MemoryFiles = Files & {
	readonly kept: Map<string, Profile>;
	/** Texts written beside profiles, by their path. */
	readonly written: Map<string, string>;
	/** What the next saves answer; empty: they succeed. */
	readonly refusals: Array<{readonly why: 'changed' | 'busy' | 'failed' | 'unsound'; readonly text: string}>;
	/** Files marked as open, and by whom. */
	readonly holders: Map<string, 'here' | 'elsewhere'>;
	/** Nothing can be written anywhere. */
	isFull: boolean;
	/** Number of saves that succeeded. */
	saves: number;
	/** Writes as another program would. */
	readonly writeElsewhere: (file: string, profile: Profile) => void;
};

/** A store of profiles by file name; those in `shipped` come with the program. */
export function memoryFiles(
	profiles: Readonly<Record<string, Profile>> = {},
	shipped: readonly string[] = [],
): MemoryFiles {
	const kept = new Map(Object.entries(profiles).map(([file, profile]) => [file, structuredClone(profile)]));
	const marks = new Map([...kept.keys()].map(file => [file, 1]));
	const written = new Map<string, string>();
	const refusals: MemoryFiles['refusals'] = [];
	const holders: MemoryFiles['holders'] = new Map();
	const put = (file: string, profile: Profile) => {
		kept.set(file, structuredClone(profile));
		marks.set(file, (marks.get(file) ?? 0) + 1);
		return {ok: true as const, mark: String(marks.get(file))};
	};

	const takenOut = new Map<string, Profile>();
	const free = (base: string) => {
		let file = base;
		for (let number = 2; kept.has(file); number++) file = `${base}-${number}`;
		return file;
	};

	const files: MemoryFiles = {
		kept,
		written,
		refusals,
		holders,
		saves: 0,
		isFull: false,
		writeElsewhere: put,
		list: (): Listed[] =>
			[...kept]
				.map(([file, {name, date}]) => ({file, name, date, isShipped: shipped.includes(file)}))
				.toSorted((a, b) => Number(a.isShipped) - Number(b.isShipped) || b.date.localeCompare(a.date)),
		load(file) {
			const profile = kept.get(file);
			if (!profile) return {ok: false, text: `${file} cannot be read.`};
			return {ok: true, profile: structuredClone(profile), mark: String(marks.get(file))};
		},
		save(file, profile, mark, isForced = false): Saved {
			const refusal = refusals.shift();
			if (refusal) return {ok: false, ...refusal};
			const isChanged = mark !== String(marks.get(file));
			if (isChanged && !isForced)
				return {ok: false, why: 'changed', text: `${file} was changed by another program.`};
			files.saves++;
			const otherFile = isChanged && kept.has(file) ? free(`${file}.other`) : undefined;
			if (otherFile !== undefined) put(otherFile, kept.get(file)!);
			return {...put(file, profile), ...(otherFile !== undefined && {otherFile})};
		},
		create(profile): Created {
			const file = free(profile.name.toLowerCase().replaceAll(' ', '-'));
			return {...put(file, profile), file};
		},
		rescue: profile => (files.isFull ? {ok: false, text: 'The disk is full.'} : files.create(profile)),
		writeBeside(file, ending, text) {
			const refusal = refusals.shift();
			if (refusal) return {ok: false, text: refusal.text};
			const path = `/memory/${file}${ending}`;
			written.set(path, text);
			return {ok: true, path};
		},
		writeSignals(file) {
			const refusal = refusals.shift();
			if (refusal) return {ok: false, text: refusal.text};
			return {ok: true, path: `/memory/${file}-signals`};
		},
		hold(file, isForced = false) {
			if (holders.get(file) === 'elsewhere' && !isForced)
				return {ok: false, text: `${file} is open elsewhere.`};
			holders.set(file, 'here');
			return {ok: true};
		},
		release(file) {
			holders.delete(file);
		},
		remove(file) {
			const profile = kept.get(file);
			if (!profile) return {ok: false, text: `${file} cannot be read.`};
			kept.delete(file);
			takenOut.set(file, profile);
			return {ok: true, removed: file, folder: '/memory/deleted'};
		},
		restore(removed): Created {
			const profile = takenOut.get(removed);
			if (!profile) return {ok: false, text: `${removed} is gone.`};
			return {...put(free(removed), profile), file: removed};
		},
		copy(file): Created {
			const profile = kept.get(file);
			if (!profile) return {ok: false, text: `${file} cannot be read.`};
			const copy = free(`${file}-copy`);
			return {...put(copy, profile), file: copy};
		},
	};
	return files;
}
