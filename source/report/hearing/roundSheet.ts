import {listed, type Named, nameOf} from '../../profile/names.ts';
import {formatNumber} from '../../profile/units/decimalText.ts';
import type {PlannedPlaying, SubGroup} from '../../study/hearing/visit.ts';
import type {RoundFile} from '../../study/playing/roundFile.ts';
import {formatEntry} from '../entryText.ts';
import {formatDelay} from '../settingText.ts';
import {wrap} from '../wrap.ts';

/** Everything that the sheet of a recorded round tells. */
export type RoundVisit = {
	readonly file: RoundFile;
	/** Name of the loop that sets the loudness. */
	readonly loop: string;
	readonly groups: readonly SubGroup[];
	readonly playings: readonly PlannedPlaying[];
	/** What the first playing alone is good for, where that was not said before. */
	readonly firstAlone?: string;
};

/** Time to touch a box, press play, and sit down, seconds. */
const betweenSeconds = 60;

const touched = {processor: 'in the bass processor', receiver: 'in the receiver', sub: 'at the sub'} as const;

const counted = (count: number) => (count === 1 ? '1 playing' : `${count} playings`);

function countWords(playings: number, seats: number): string {
	return seats > 1 ? `${counted(playings)}, ${playings / seats} at each seat` : counted(playings);
}

/** What to do with the subs before a playing. */
export function touchWords(named: Named, {touch, isBack}: PlannedPlaying): string {
	if (!touch) return isBack ? 'leave the subs as they are now' : 'everything as it stands';
	const names = listed(touch.subs.map(id => nameOf(named, id)));
	const where = touched[touch.box];
	if (touch.change === 'turned')
		return isBack ? `turn ${names} back, ${where}` : `invert the polarity of ${names}, ${where}`;
	if (touch.change === 'delayed' && touch.moved) return movedWords(names, where, touch.moved, isBack);
	return isBack ? `let ${names} sound again, ${where}` : `mute ${names}, ${where}, not at its own switch`;
}

/** The delay or distance to type in, so that the subs come a third of a period later or earlier. */
function movedWords(
	names: string,
	where: string,
	{timing, from, to, change, addedMs}: NonNullable<SubGroup['moved']>,
	isBack: boolean,
): string {
	const entry = timing.kind;
	const shown = (value: number) =>
		timing.kind === 'delay' ? formatDelay(Number(value.toFixed(3))) : formatEntry(value, timing);
	const size = `${formatNumber(Math.abs(addedMs), 1)} ms ${addedMs > 0 ? 'later' : 'earlier'}`;
	if (from !== undefined && to !== undefined)
		return isBack
			? `set the ${entry} of ${names} back to ${shown(from)}, ${where}`
			: `set the ${entry} of ${names} to ${shown(to)} instead of ${shown(from)}, ${where} (${size})`;
	return isBack
		? `set the ${entry} of ${names} back to what it was, ${where}`
		: `make the ${entry} of ${names} ${shown(Math.abs(change))} ${change > 0 ? 'more' : 'less'}, ${where} (${size})`;
}

/** The sheet of a recorded round: what was written, what to switch off, how to play and record it, in which order. */
export function roundSheetLines(
	named: Named,
	visit: RoundVisit,
	folder: string | undefined,
	width: number,
	then = 'Then: roomtare hear PROFILE RECORDING...',
): string[] {
	const {file, loop, playings, firstAlone} = visit;
	const {round} = file;
	const seconds = formatNumber(round.seconds, 0);
	const minutes = Math.ceil((playings.length * (round.seconds + betweenSeconds)) / 60);
	const first = nameOf(named, round.channels[0]!);
	const item = (text: string) => wrap(text, width, '- ');
	const seats = [...new Set(playings.map(({seat}) => seat))];
	return [
		...wrap(
			`${folder === undefined ? '' : `Written to ${folder}: `}${file.file}, ${seconds} s, ${round.channels.length} of ${file.places.length} channels sound, 48 kHz, 24 bit, sweeps at −20 dBFS; and ${loop}, to set the loudness.`,
			width,
		),
		...(file.leftOut.length > 0
			? wrap(
					`Not in it: ${listed(file.leftOut.map(id => nameOf(named, id)))}. Tape and meter are enough for them.`,
					width,
				)
			: []),
		'',
		'Before',
		...item(
			'Switch off upmixing, sound effects, dynamic volume, night mode and loudness in player and receiver.',
		),
		...item('Close windows and doors, switch off fans. Subs: standby off where they have a switch for it.'),
		...item(
			'Recorder: a phone, a handheld, a USB microphone. Any format. No voice filter, no gain control, no noise suppression; not through a chat program, and send the file itself, not a message of it.',
		),
		...item('Put it where the head will be, ear height, on something that stays; nobody in front of it.'),
		...item(
			`Master volume down first. Play ${loop} and turn up slowly until it is as loud as talking from near: about 75 dB on a meter. Sweeps are then about 85 dB. From then on leave master and recorder alone.`,
		),
		...item(
			'Ears: nobody close to a speaker; low sweeps move cones far. Stop when something buzzes or clacks.',
		),
		'',
		...wrap(
			`${countWords(playings.length, seats.length)}, about ${minutes} minutes. ${seats.length > 1 ? 'One may stop after each seat; the first one alone gives a result. ' : ''}The recorder may run through.`,
			width,
		),
		...(firstAlone === undefined ? [] : wrap(firstAlone, width)),
		...playings.flatMap((playing, index) =>
			wrap(
				`${playing.touch ? '' : `At ${nameOf(named, playing.seat)}: `}${touchWords(named, playing)}; play ${file.file} from its beginning`,
				width,
				`${String(index + 1).padStart(2)}. `,
			),
		),
		...(playings.some(({touch}) => touch)
			? wrap('Within one seat the recorder must not move, not by a finger’s breadth.', width)
			: []),
		'',
		...wrap(
			`The file opens with faint noise and one short burst from each speaker, ${first} first; then chirps, soft sweeps, and the sweeps that count.`,
			width,
		),
		...wrap(then, width),
	];
}
