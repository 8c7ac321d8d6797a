/** Ending of the version before the last save; such files are not listed. */
const previousEnding = '.previous.json';

/** Longest name before the ending; file systems take 255 bytes, and temporary files need some of them. */
const longestName = 80;

/**
A file name for a profile: lower-case letters and digits of any script without their accents, dashes between.

@returns Such as `cellar-2026` for “Cellar, 2026”; `profile` where nothing is left.
*/
export function slugOf(name: string): string {
	const slug = name
		.normalize('NFKD')
		.replace(/\p{M}/gu, '')
		.toLowerCase()
		.replace(/[^\p{L}\p{N}]+/gu, '-')
		.slice(0, longestName)
		.replace(/^-|-$/g, '');
	// Names that some systems keep for devices.
	return slug === '' ? 'profile' : /^(con|prn|aux|nul|com\d|lpt\d)$/.test(slug) ? `${slug}-profile` : slug;
}

/** Name of the version before the last save, beside the file. */
export function previousPath(path: string): string {
	return path.replace(/(?:\.json)?$/i, previousEnding);
}

/** Name of a version by another program that was written over, beside the file; numbered where there are several. */
export function otherPath(path: string, count: number): string {
	return path.replace(/(?:\.json)?$/i, `.other${count === 1 ? '' : `-${count}`}.json`);
}

/** Whether a file of the folder is a profile, by its name. */
export function isProfileFile(fileName: string): boolean {
	return /\.json$/i.test(fileName) && !/\.(?:previous|other(?:-\d+)?)\.json$|^\./i.test(fileName);
}
