import {Box, useIsScreenReaderEnabled} from 'ink';
import {wrap} from '../../report/wrap.ts';
import {hearingKeymap} from '../hearing/keymap.ts';
import {arriveLines, heardLinesOf, playingsLines} from '../hearing/lines.ts';
import {sheetLines} from '../hearing/sheet.ts';
import type {HearingState} from '../hearing/state.ts';
import {footerOf} from '../keys/binding.ts';
import {footerText} from '../parts/footerText.ts';
import {Lines, type ScreenLine} from '../parts/lines.tsx';
import {scrolled} from '../parts/scrolled.ts';
import type {WindowSize} from '../terminal/useWindowSize.ts';
import type {HearingScreen} from './screen.ts';

const steps = ['sheet', 'arrive', 'playings', 'lines'] as const;
const stepNames = {sheet: 'play', arrive: 'record', playings: 'sort', lines: 'look'} as const;

/** A recorded round: what to play, which recording, what was heard. */
export function HearingView({screen, size}: {readonly screen: HearingScreen; readonly size: WindowSize}) {
	const {hearing, back} = screen;
	const {columns, rows} = size;
	const isSpoken = useIsScreenReaderEnabled();
	const profile = back.state.subject;
	const place = steps.map(step => (step === hearing.step ? stepNames[step].toUpperCase() : stepNames[step]));
	const note = hearing.note
		? wrap(hearing.note.text, columns, '  ').map(
				(text): ScreenLine => ({text, style: hearing.note!.kind === 'no' ? 'trouble' : 'good'}),
			)
		: [];
	const head: ScreenLine[] = [
		{
			text: ` ${profile.name}`,
			after: `   ${hearing.round === 'proof' ? 'proof by recording' : 'recorded round'}: ${place.join(' · ')}`,
		},
		...note,
	];
	const footer = footerText(footerOf(hearingKeymap, hearing.step), columns);
	const lines = linesOf(screen, columns);
	const height = Math.max(1, rows - 2 - head.length);
	const from = hearing.step === 'sheet' ? hearing.from : windowOf(hearing, lines, height);
	return (
		<Box flexDirection="column" width={columns}>
			<Lines lines={head} columns={columns} />
			<Box flexDirection="column" height={isSpoken ? undefined : height}>
				<Lines lines={isSpoken ? lines : scrolled(lines, from, height)} columns={columns} />
			</Box>
			<Lines lines={[{text: footer, style: 'quiet'}]} columns={columns} />
		</Box>
	);
}

function linesOf({hearing, back}: HearingScreen, columns: number): ScreenLine[] {
	const profile = back.state.subject;
	switch (hearing.step) {
		case 'sheet':
			return sheetLines(profile, hearing, columns);
		case 'arrive':
			return arriveLines(hearing, columns, new Date());
		case 'playings':
			return playingsLines(profile, hearing, columns);
		case 'lines':
			return heardLinesOf(profile, hearing, columns);
	}
}

/** First line of the window that shows the cursor, or what was scrolled to. */
function windowOf({from}: HearingState, lines: readonly ScreenLine[], height: number): number {
	const cursor = lines.findIndex(({text}) => text.startsWith('›'));
	return Math.max(from, cursor - height + 4, 0);
}
