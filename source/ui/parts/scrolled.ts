import type {ScreenLine} from './lines.tsx';

/**
A window of lines that says how much it hides.

@param from - First line wanted; held so that the window stays full.
*/
export function scrolled(lines: readonly ScreenLine[], from: number, height: number): ScreenLine[] {
	if (lines.length <= height) return [...lines];
	const room = Math.max(0, height - 1);
	const start = firstShown(lines.length, from, height);
	const below = lines.length - start - room;
	const hidden = [start > 0 ? `${start} lines above` : '', below > 0 ? `${below} lines below` : ''];
	return [
		...lines.slice(start, start + room),
		{text: `  ${hidden.filter(Boolean).join(', ')}`, style: 'quiet'},
	];
}

/** The first line that a window really shows. */
export function firstShown(count: number, from: number, height: number): number {
	const room = Math.max(0, height - 1);
	return count <= height ? 0 : Math.max(0, Math.min(from, count - room));
}
