import {Box} from 'ink';
import {useMemo} from 'react';
import {compareLines} from '../compare/compareLines.ts';
import {footerOf} from '../keys/binding.ts';
import {footerText} from '../parts/footerText.ts';
import {Lines} from '../parts/lines.tsx';
import {firstShown, scrolled} from '../parts/scrolled.ts';
import type {WindowSize} from '../terminal/useWindowSize.ts';
import {compareKeymap, fullKey} from './compare.ts';
import type {CompareScreen} from './screen.ts';

/** Two profiles side by side, what changed and why, in a window that scrolls. */
export function CompareView({screen, size}: {readonly screen: CompareScreen; readonly size: WindowSize}) {
	const {older, newer, isFull = false} = screen;
	const {columns} = size;
	const lines = useMemo(
		() => compareLines(older, newer, {columns, isFull, fullKey}),
		[older, newer, columns, isFull],
	);
	const height = Math.max(1, size.rows - 2);
	const from = firstShown(lines.length, screen.from, height);
	const keys = footerText(footerOf(compareKeymap, 'compare'), columns);
	return (
		<Box flexDirection="column" width={columns}>
			<Box height={height} flexDirection="column">
				<Lines lines={scrolled(lines, from, height)} columns={columns} />
			</Box>
			<Lines lines={[{text: keys, style: 'quiet'}]} columns={columns} />
		</Box>
	);
}
