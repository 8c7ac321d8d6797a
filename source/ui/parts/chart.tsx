import {Box, Text, useIsScreenReaderEnabled} from 'ink';
import {memo, useMemo} from 'react';
import {type ChartOptions, chartText, drawChart} from '../../report/chart.ts';

/** A chart of levels over frequency, or the same in words for a screen reader. */
export const Chart = memo(function Chart({options}: {readonly options: ChartOptions}) {
	const isScreenReader = useIsScreenReaderEnabled();
	const lines = useMemo(
		() => (isScreenReader ? chartText(options) : drawChart(options)),
		[isScreenReader, options],
	);
	return (
		<Box flexDirection="column">
			<Text>{lines.join('\n')}</Text>
		</Box>
	);
});
