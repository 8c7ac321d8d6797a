import type {Problem} from './problem.ts';
import {lineAndColumn} from './scan.ts';

/** Largest profile file, bytes. */
export const largestBytes = 64 * 1024 * 1024;

const whole = {path: ''} as const;

/** Bytes of a file to text: UTF-8, with or without a byte-order mark, or the problem in words. */
export function decodeText(
	input: Uint8Array | string,
): {readonly text: string} | {readonly problem: Problem} {
	const megabytes = (input.length / 1024 / 1024).toFixed(0);
	if (input.length > largestBytes) {
		return {
			problem: {
				...whole,
				value: `A file of ${megabytes} MiB`,
				expected: 'at most 64 MiB',
				remedy: 'This can be no profile. Check the file name.',
			},
		};
	}

	if (typeof input === 'string') return checkText(input.replace(/^\uFEFF/, ''));
	if ((input[0] === 0xff && input[1] === 0xfe) || (input[0] === 0xfe && input[1] === 0xff)) {
		return {
			problem: {
				...whole,
				value: 'Text in UTF-16',
				expected: 'UTF-8',
				remedy: 'Save the file again as UTF-8.',
			},
		};
	}

	try {
		// The decoder drops a byte-order mark.
		return checkText(new TextDecoder('utf-8', {fatal: true}).decode(input));
	} catch {
		if (input.includes(0)) return {problem: binary};
		const lenient = new TextDecoder('utf-8').decode(input);
		return {
			problem: {
				...whole,
				...lineAndColumn(lenient, lenient.indexOf('\uFFFD')),
				value: 'Bytes that are not UTF-8',
				expected: 'a text file in UTF-8',
				remedy: 'Save the file again as UTF-8, or take the previous version.',
			},
		};
	}
}

const binary: Problem = {
	...whole,
	value: 'A binary file',
	expected: 'a profile in JSON',
	remedy: 'Check the file name.',
};

function checkText(text: string): {readonly text: string} | {readonly problem: Problem} {
	if (text.includes('\u0000')) return {problem: binary};
	if (text.trim() === '') {
		return {
			problem: {
				...whole,
				value: 'An empty file',
				expected: 'a profile in JSON',
				remedy: 'Take the previous version, or begin with “roomtare new”.',
			},
		};
	}

	return {text};
}
