import type {Remark} from '../../profile/finding.ts';
import type {Say} from './say.ts';

/** Remarks that bring their text along. Goes with the last of them. */

/** The name before a text and what it says; no name where the text tells within a sentence what it is about. */
export function olderParts(
	{about, text}: Remark,
	say: Say,
): {readonly subject?: string; readonly said: string} {
	if (about === undefined) return {said: text};
	const names = [say.name(about), about];
	const before = names.find(name => text.startsWith(`${name}: `));
	// The names of several stand in a sentence already.
	if (before !== undefined && about.includes('+')) return {said: text};
	const said = before === undefined ? text : text.slice(before.length + 2);
	if (names.some(name => said.includes(name))) return {said: text};
	return {subject: say.name(about), said};
}

/** First sentence of a text, without the name that a row shows anyway. */
export function olderHead({about, text}: Remark, say: Say): string {
	const names = about === undefined ? [] : [say.name(about), about];
	const before = names.find(name => text.startsWith(`${name}: `));
	const said = before === undefined ? text : text.slice(before.length + 2);
	return /^.*?[.?](?= \p{Lu})/u.exec(said)?.[0] ?? said;
}
