import {Box, Text, useIsScreenReaderEnabled} from 'ink';
import {memo} from 'react';
import {largeLines} from '../../report/largeLines.ts';

type Props = {
	/** The value with its unit, such as `−0.5 dB`. */
	readonly value: string;
	readonly columns: number;
	/** Says beside the value in words how it stands, such as `now` or `done`. */
	readonly after?: string;
	readonly isQuiet?: boolean;
};

/** A value in figures three lines tall where the width allows, else on one line; a screen reader gets the text. */
export const LargeValue = memo(function LargeValue({value, columns, after, isQuiet = false}: Props) {
	const isScreenReader = useIsScreenReaderEnabled();
	const lines = (isScreenReader ? undefined : largeLines(value, columns)) ?? [value];
	return (
		<Box flexDirection="column">
			<Text bold={!isQuiet} dimColor={isQuiet}>
				{lines.join('\n')}
				{after ? `  ${after}` : ''}
			</Text>
		</Box>
	);
});
