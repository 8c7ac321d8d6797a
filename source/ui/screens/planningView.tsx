import {Box, useIsScreenReaderEnabled} from 'ink';
import {useMemo} from 'react';
import {wrap} from '../../report/wrap.ts';
import {rowMoves} from '../../study/arrangement/row.ts';
import {footerOf} from '../keys/binding.ts';
import {footerText} from '../parts/footerText.ts';
import {Lines, type ScreenLine} from '../parts/lines.tsx';
import {movingKeys, planKeymap} from '../planning/keymap.ts';
import {headLines, ladderLines} from '../planning/lines.ts';
import {movableThings} from '../planning/moving.ts';
import {panelLines} from '../planning/panel.ts';
import type {Planning} from '../planning/planning.ts';
import {rowAtCursor} from '../planning/rows.ts';
import type {WindowSize} from '../terminal/useWindowSize.ts';
import type {PlanningScreen} from './screen.ts';

/** The ladder of arrangements, one floor plan, and the bass at the seats, before anything is lifted. */
export function PlanningView({screen, size}: {readonly screen: PlanningScreen; readonly size: WindowSize}) {
	const {plan} = screen;
	const isScreenReader = useIsScreenReaderEnabled();
	const {columns} = size;
	const height = Math.max(1, size.rows - 1);
	const foot = useMemo(() => footLines(plan, columns), [plan, columns]);
	const head = [...headLines(plan, columns), ...ladderLines(plan, columns)];
	const room = Math.max(0, height - head.length - foot.length - 1);
	const panel =
		room < 3 && !isScreenReader
			? [{text: '  The plan needs a larger window.', style: 'quiet' as const}]
			: panelLines(plan, {columns, rows: room, isScreenReader});
	const lines: ScreenLine[] = [...head, {text: ' '}, ...(isScreenReader ? panel : panel.slice(0, room))];
	return (
		<Box flexDirection="column" width={columns}>
			<Box height={isScreenReader ? undefined : Math.max(1, height - foot.length)} flexDirection="column">
				<Lines
					lines={isScreenReader ? lines : lines.slice(0, Math.max(1, height - foot.length))}
					columns={columns}
				/>
			</Box>
			<Lines lines={foot} columns={columns} />
		</Box>
	);
}

function footLines(plan: Planning, columns: number): ScreenLine[] {
	const {notes, typing, moving} = plan;
	const said = notes.flatMap(({kind, text}) =>
		wrap(kind === 'no' ? `! ${text}` : text, columns, '  ').map(
			(line): ScreenLine => ({text: line, ...(kind === 'no' && {style: 'trouble' as const})}),
		),
	);
	if (typing)
		return [
			...wrap(asked(plan), columns, '  ').map((text): ScreenLine => ({text, style: 'quiet'})),
			...said.slice(0, 4),
			{text: `  ▸ ${typing.text}▏`, style: 'value'},
		];
	const keys = moving ? movingKeys : footerOf(planKeymap, 'rows');
	return [...said.slice(0, 3), {text: footerText(keys, columns), style: 'quiet'}];
}

function asked(plan: Planning): string {
	switch (plan.typing?.what) {
		case 'thing':
			return `Move what? ${movableThings(plan)
				.map(({name}, i) => `${i + 1} ${name}`)
				.join('  ')}`;
		case 'notHere': {
			const subs = rowMoves(plan.space, rowAtCursor(plan)).filter(({kind}) => kind === 'sub');
			return subs.length > 1
				? 'Why not there? The number of the sub in the list, then the reason: 1 the door opens there.'
				: 'Why not there? Such as: the door opens there. Enter marks it for good, Esc leaves it.';
		}

		default:
			return 'The room: width 5m, height 2.7m/1.9m, notch back right 1.5m 2m, seat 3.9m, seats 3, subs 2, picture 2.2m, door left 0.5m 1.4m swing 0.9m, radiator back 1m 2m, walkway floor 0m 1m 2m 3m, drop 1. Enter alone leaves.';
	}
}
