/** Controls but the tab and the line feed, the second set of controls, separators of lines, and what turns the direction of writing. */
const unseen = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u061c\u2028-\u202e\u2066-\u2069]/g;

/**
A text in which nothing can steer a terminal or turn the direction of writing: such characters are written out, as in
`\u009b`. A tab and a line feed stay. In JSON, where they stand within strings only, the value stays the same.

@see ECMA-48 for the control functions, Unicode UAX #9 for the directions.
*/
export function visibleText(text: string): string {
	return text.replace(unseen, one => `\\u${one.charCodeAt(0).toString(16).padStart(4, '0')}`);
}
