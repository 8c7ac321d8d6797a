/** Ending of the version before the last save; such files are not listed. */
export const previousEnding = '.previous.json';

/** Longest name before the ending; file systems take 255 bytes, and temporary files need some of them. */
const longestName = 80;

/**
A file name for a profile: lower-case letters and digits of any script without their accents, dashes between.

@returns Such as `attic-2026` for “Attic, 2026”; `profile` where nothing is left.
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

/** Whether a file of the folder is a profile, by its name. */
export function isProfileFile(fileName: string): boolean {
	return (
		/\.json$/i.test(fileName) && !fileName.toLowerCase().endsWith(previousEnding) && !fileName.startsWith('.')
	);
}
