import {expect, test} from 'vitest';
import {markdownText} from '../../source/report/markdownText.ts';

test('markdownText lets no sign of Markdown or HTML act', () => {
	expect(markdownText('<b>[x](javascript:y)</b> *a* `c` a|b ~~d~~ &#x202e; \\')).toBe(
		'\\<b\\>\\[x\\](javascript:y)\\</b\\> \\*a\\* \\`c\\` a\\|b \\~\\~d\\~\\~ \\&#x202e; \\\\',
	);
});

test('markdownText keeps words, numbers and units, in one line', () => {
	expect(markdownText('Front left:\n2.87 m, −0.5 dB (± 0.3)')).toBe('Front left: 2.87 m, −0.5 dB (± 0.3)');
});
