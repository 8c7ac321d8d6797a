import {renderToString} from 'ink';
import {expect, test} from 'vitest';
import {LargeValue} from '../../../source/ui/parts/largeValue.tsx';
import {readAloud} from '../screenReader.ts';

test('LargeValue draws figures three lines tall when there is room', () => {
	const lines = renderToString(<LargeValue value="−0.5 dB" columns={40} after="done" />).split('\n');
	expect(lines).toHaveLength(3);
	expect(lines[2]).toMatch(/dB {2}done$/);
});

test('LargeValue stays on one line when the terminal is narrow or the value is a word', () => {
	expect(renderToString(<LargeValue value="−0.5 dB" columns={10} />)).toBe('−0.5 dB');
	expect(renderToString(<LargeValue value="full range" columns={80} />)).toBe('full range');
});

test('LargeValue is read aloud as its text', () => {
	expect(readAloud(<LargeValue value="−0.5 dB" columns={40} />)).toContain('−0.5 dB');
});
