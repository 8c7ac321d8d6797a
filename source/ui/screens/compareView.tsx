import {Box} from 'ink';
import {useMemo} from 'react';
import {diffProfiles} from '../../calibration/diff/diffProfiles.ts';
import type {Profile} from '../../profile/types.ts';
import {diffText} from '../../report/diff/text.ts';
import {footerOf} from '../keys/binding.ts';
import {footerText} from '../parts/footerText.ts';
import {Lines} from '../parts/lines.tsx';
import type {WindowSize} from '../terminal/useWindowSize.ts';
import {solutionOf} from '../walk/solution.ts';
import {lengthUnitOf} from '../walk/tape/units.ts';
import {compareKeymap} from './compare.ts';
import type {CompareScreen} from './screen.ts';

const solved = (profile: Profile) => ({profile, solution: solutionOf(profile)});

/** What changed between two profiles and why, in a window that scrolls. */
export function CompareView({screen, size}: {readonly screen: CompareScreen; readonly size: WindowSize}) {
	const {older, newer} = screen;
	const {columns} = size;
	const text = useMemo(() => {
		const options = {lengthUnit: lengthUnitOf(newer), isFull: false, width: columns};
		return diffText(diffProfiles(solved(older), solved(newer)), options).split('\n');
	}, [older, newer, columns]);
	const height = Math.max(1, size.rows - 2);
	const from = Math.min(screen.from, Math.max(0, text.length - height));
	const lines = text.slice(from, from + height).map(line => ({text: line}));
	const left = text.length - from - lines.length;
	const keys = footerText(footerOf(compareKeymap, 'compare'), columns - 16);
	return (
		<Box flexDirection="column" width={columns}>
			<Box height={height} flexDirection="column">
				<Lines lines={lines} columns={columns} />
			</Box>
			<Lines
				lines={[{text: keys, style: 'quiet', after: left > 0 ? `   ${left} lines below` : undefined}]}
				columns={columns}
			/>
		</Box>
	);
}
