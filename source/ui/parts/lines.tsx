import {Box, Text} from 'ink';
import {memo} from 'react';

/** One line of a screen. Every meaning of a style is also in the words or signs of the text. */
export type Line = {
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

/** Lines one under the other, each cut at the width of its box. */
export const Lines = memo(function Lines({lines}: {readonly lines: readonly Line[]}) {
	return (
		<Box flexDirection="column">
			{lines.map((line, index) => (
				// biome-ignore lint/suspicious/noArrayIndexKey: a line is its place on the screen.
				<OneLine key={index} {...line} />
			))}
		</Box>
	);
});

const OneLine = memo(function OneLine({text, style, after}: Line) {
	const isStrong = style === 'strong' || style === 'value';
	return (
		<Text wrap="truncate" bold={isStrong} dimColor={style === 'quiet'} color={style && colours[style]}>
			{text === '' && !after ? ' ' : text}
			{after ? (
				<Text dimColor bold={false}>
					{after}
				</Text>
			) : null}
		</Text>
	);
});
