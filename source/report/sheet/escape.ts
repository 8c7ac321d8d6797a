const entities: Readonly<Record<string, string>> = {
	'&': '&amp;',
	'<': '&lt;',
	'>': '&gt;',
	'"': '&quot;',
	"'": '&#39;',
};

/** Text for HTML and SVG, in content and in quoted attributes. */
export function escapeMarkup(text: string): string {
	return text.replace(/[&<>"']/g, character => entities[character]!);
}
