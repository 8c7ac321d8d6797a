import {Box, useIsScreenReaderEnabled} from 'ink';
import {useMemo} from 'react';
import {compareLines} from '../compare/compareLines.ts';
import {planLines} from '../compare/planLines.ts';
import {footerOf} from '../keys/binding.ts';
import {footerText} from '../parts/footerText.ts';
import {Lines} from '../parts/lines.tsx';
import {firstShown, scrolled} from '../parts/scrolled.ts';
import type {WindowSize} from '../terminal/useWindowSize.ts';
import {compareKeymap, compareMode, fullKey} from './compare.ts';
import type {CompareScreen} from './screen.ts';

/** Two profiles side by side, what changed and why, or their floor plans, in a window that scrolls. */
export function CompareView({screen, size}: {readonly screen: CompareScreen; readonly size: WindowSize}) {
	const {older, newer, isFull = false, isPlanShown = false} = screen;
	const {columns} = size;
	const isInWords = useIsScreenReaderEnabled();
	const height = Math.max(1, size.rows - 2);
	const lines = useMemo(
		() =>
			isPlanShown
				? planLines(older, newer, {columns, rows: height - 1, isInWords})
				: compareLines(older, newer, {columns, isFull, fullKey}),
		[older, newer, columns, isFull, isPlanShown, height, isInWords],
	);
	const from = firstShown(lines.length, screen.from, height);
	const keys = footerText(footerOf(compareKeymap, compareMode(screen)), columns);
	return (
		<Box flexDirection="column" width={columns}>
			<Box height={height} flexDirection="column">
				<Lines lines={scrolled(lines, from, height)} columns={columns} />
			</Box>
			<Lines lines={[{text: keys, style: 'quiet'}]} columns={columns} />
		</Box>
	);
}
