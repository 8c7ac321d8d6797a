import {fitCells} from '../../report/fitCells.ts';
import type {ScreenLine} from '../parts/lines.tsx';
import {tapeRule} from '../parts/tapeRule.ts';
import {currentPrompt} from '../walk/state.ts';
import {promptsFor, stopAt, stopStatusOf, walkRound} from '../walk/stops.ts';
import {stripText, stripWords} from '../walk/stripText.ts';
import type {WalkScreen} from './screen.ts';

/** How much of the head is drawn; `spoken` is for screen readers. */
export type HeadKind = 'full' | 'title' | 'spoken';

/** Name, place in the round, the stops, and the tape that shows how far one is. */
export function walkHead(screen: WalkScreen, columns: number, kind: HeadKind): ScreenLine[] {
	const {subject} = screen.state;
	const prompt = currentPrompt(walkRound, screen.state);
	const own = promptsFor(subject).filter(({stop}) => stop === prompt.stop);
	const at = own.findIndex(({id}) => id === prompt.id);
	const stops = stopStatusOf(subject);
	const stop = stopAt(prompt.stop)?.name ?? '';
	const place = own.length > 1 ? `${stop}, ${at + 1} of ${own.length}` : stop;
	const right = `${mark(screen)}${place} `;
	if (kind === 'spoken') return [{text: `${subject.name}. ${right}`}, {text: stripWords(stops, prompt.stop)}];
	const left = fitCells(` ${subject.name}, ${subject.date}`, Math.max(0, columns - right.length - 1));
	const title: ScreenLine = {text: left, after: ` ${right}`};
	if (kind === 'title') return [title];
	const answered = own.map(({isAnswered}) => isAnswered);
	return [
		title,
		{text: stripText(stops, prompt.stop, columns)},
		{text: tapeRule(answered, Math.max(0, at), columns), style: 'quiet'},
	];
}

/** What the file lacks, or that it is another by now. */
function mark({isUnsaved, refusal}: WalkScreen): string {
	if (isUnsaved) return 'NOT ON DISK   ';
	if (!refusal) return '';
	return refusal.why === 'changed' ? 'CHANGED ELSEWHERE   ' : 'PLACE NOT ON DISK   ';
}
