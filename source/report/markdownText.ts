/**
A text as it stands in one line of Markdown: its signs, of HTML too, mean themselves.

@see CommonMark 0.30, section 2.4: a backslash before any sign of ASCII makes it mean itself.
*/
export function markdownText(text: string): string {
	return text.replace(/[\\`*_[\]<>&|~]/g, '\\$&').replace(/\s+/g, ' ');
}
