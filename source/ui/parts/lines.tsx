import {Box, Text, useIsScreenReaderEnabled} from 'ink';
import {memo} from 'react';
import {visibleText} from '../../profile/visibleText.ts';
import {cellWidth, fitCells} from '../../report/fitCells.ts';

/** One line of a screen. Every meaning of a style is also in the words or signs of the text. */
export type ScreenLine = {
	readonly text: string;
	readonly style?: 'strong' | 'quiet' | 'doubt' | 'trouble' | 'good' | 'value';
	/** A quiet end of the line, such as a unit. */
	readonly after?: string;
};

const colours = {
	strong: undefined,
	quiet: undefined,
	doubt: 'yellow',
	trouble: 'red',
	good: 'green',
	value: 'cyan',
} as const;

type LinesProps = {
	readonly lines: readonly ScreenLine[];
	/** Cells that each line is cut to. Measuring them here costs far less than letting the box cut. */
	readonly columns: number;
};

/** Lines one under the other, each cut where it does not fit. */
export const Lines = memo(function Lines({lines, columns}: LinesProps) {
	return (
		<Box flexDirection="column">
			{lines.map((line, index) => (
				// biome-ignore lint/suspicious/noArrayIndexKey: a line is its place on the screen.
				<OneLine key={index} {...line} columns={columns} />
			))}
		</Box>
	);
});

const OneLine = memo(function OneLine({
	text,
	style,
	after = '',
	columns,
}: ScreenLine & {readonly columns: number}) {
	// A reader of screens has no width.
	const cells = useIsScreenReaderEnabled() ? Number.POSITIVE_INFINITY : columns;
	const isStrong = style === 'strong' || style === 'value';
	// Names of files and words of errors come from outside: what would steer the terminal is written out.
	const start = cut(visibleText(text), cells);
	const end = cut(visibleText(after), cells - cellWidth(start));
	return (
		<Text bold={isStrong} dimColor={style === 'quiet'} color={style && colours[style]}>
			{start === '' && end === '' ? ' ' : start}
			{end === '' ? null : (
				<Text dimColor bold={false}>
					{end}
				</Text>
			)}
		</Text>
	);
});

function cut(text: string, cells: number): string {
	return cellWidth(text) <= cells ? text : fitCells(text, cells);
}
