import fs from 'node:fs';
import {expect, test, vi} from 'vitest';
import {renameOver} from '../../source/platform/renameOver.ts';

const refusal = (code: string) => Object.assign(new Error(code), {code});

test('renameOver waits on Windows while another program has the file open', () => {
	const rename = vi.spyOn(fs, 'renameSync').mockImplementation(() => {});
	rename.mockImplementationOnce(() => {
		throw refusal('EPERM');
	});
	renameOver('a', 'b', true);
	expect(rename).toHaveBeenCalledTimes(2);
	rename.mockRestore();
});

test('renameOver gives any other refusal on at once, and all of them elsewhere', () => {
	const rename = vi.spyOn(fs, 'renameSync');
	for (const [code, isWindows] of [
		['ENOSPC', true],
		['EPERM', false],
	] as const) {
		rename.mockReset();
		rename.mockImplementation(() => {
			throw refusal(code);
		});
		expect(() => renameOver('a', 'b', isWindows)).toThrow(code);
		expect(rename).toHaveBeenCalledTimes(1);
	}

	rename.mockRestore();
});
