import wholeStringWidth from 'quick-whole:string-width';
import {bareText, plain} from './plain.js';

/** Cells of a text: of a plain one its length, of others what the package finds. */
export default function stringWidth(text, options) {
	if (options !== undefined || typeof text !== 'string') return wholeStringWidth(text, options);
	const bare = bareText(text);
	return plain.test(bare) ? bare.length : wholeStringWidth(text);
}
