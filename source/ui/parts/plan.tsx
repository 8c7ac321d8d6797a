import {Box, Text, useIsScreenReaderEnabled} from 'ink';
import {memo, useMemo} from 'react';
import type {LengthUnit} from '../../profile/types.ts';
import {drawPlan, type PlanScene, planText} from '../../report/plan.ts';

type Props = {
	readonly scene: PlanScene;
	readonly lengthUnit: LengthUnit;
	/** Cells and lines available. */
	readonly columns: number;
	readonly rows: number;
};

/** The floor plan, or the same in words for a screen reader. */
export const Plan = memo(function Plan({scene, lengthUnit, columns, rows}: Props) {
	const isScreenReader = useIsScreenReaderEnabled();
	const lines = useMemo(
		() => (isScreenReader ? planText(scene, lengthUnit) : drawPlan(scene, {columns, rows, lengthUnit})),
		[isScreenReader, scene, lengthUnit, columns, rows],
	);
	return (
		<Box flexDirection="column">
			<Text>{lines.join('\n')}</Text>
		</Box>
	);
});
