import {nameOf} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import type {BlendBlock} from '../../study/calibration/blend/steps.ts';
import {addedText, blendCautions, blendSignalText, blockSentence, howToRead} from '../said/blend.ts';
import {capitalised} from '../said/sentences.ts';
import {wrap} from '../wrap.ts';
import {actionSentence, plainNames} from './names.ts';

/**
What to read next, block by block, with its cautions.

@param isDone - Whether the answer is there without them.
*/
export function toReadNext(
	profile: Profile,
	{
		blocks,
		seat,
		isDone,
	}: {readonly blocks: readonly BlendBlock[]; readonly seat: string; readonly isDone: boolean},
	width: number,
): string[] {
	const open = blocks
		.map(block => ({...block, steps: block.steps.filter(({isTaken}) => !isTaken)}))
		.filter(({steps}) => steps.length > 0);
	const count = open.reduce((sum, {steps}) => sum + steps.length, 0);
	if (count === 0) return [];
	if (isDone) return ['', ...wrap(`${count} more readings would be surer; none is needed.`, width)];
	return [
		'',
		`Next: ${count} readings at ${nameOf(profile, seat)}`,
		...blendCautions.flatMap(caution => wrap(caution, width, '  ! ')),
		...wrap(howToRead, width, '  '),
		...open.flatMap((block, index) => blockLines(profile, block, index, width)),
	];
}

function blockLines(profile: Profile, block: BlendBlock, index: number, width: number): string[] {
	// One line a speaker: its tones, or its noise with how often.
	const into = new Map<string, string[]>();
	for (const {signal, playInto} of block.steps) {
		const names = plainNames(profile, playInto);
		into.set(names, [...(into.get(names) ?? []), blendSignalText(signal)]);
	}

	const read = [...into].map(([names, signals]) => {
		const once = [...new Set(signals)];
		const times = signals.length === once.length ? '' : `, ${signals.length} times`;
		return `${once.join(', ')} into ${names}${times}`;
	});
	const number = `${String(index + 1).padStart(2)}. `;
	return [
		...wrap(`${capitalised(addedText(profile, block))}. ${blockSentence(block)}`, width, number),
		...block.actions.flatMap(action => wrap(actionSentence(profile, action), width, '    > ')),
		...wrap(`${read.join('; ')}.`, width, '    '),
	];
}
