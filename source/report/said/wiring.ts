import {listed} from '../../profile/names.ts';
import {conductorText} from '../../profile/units/conductor.ts';
import type {PlateRating, WiringFacts} from '../../study/wiring/facts.ts';
import type {Sentences} from './sentences.ts';

const electrician = 'Follow local codes and the maker’s instructions.';

const loadText = (watts: number, share: number, {value, unit}: PlateRating) =>
	`carries ${Math.round(watts)} W, ${Math.round(share * 100)} % of its ${value} ${unit}`;

export const wiringSentences: Sentences<WiringFacts> = {
	'line-split': ({cables}) => [`feeds ${listed(cables)}`, 'A Y-lead is needed there.'],
	'terminal-taken': ({cables}) => [
		`holds ${cables.length} cables, ${listed(cables)}`,
		'One of them belongs elsewhere: follow it by hand and correct its end.',
	],
	'cable-missing': ({from, to}, {name}) => [
		'no cable reaches it',
		`It needs one from ${name(from)} to ${name(to)}.`,
	],
	'end-unknown': ({end}) => [
		`ends at “${end}”, which the profile does not know`,
		'Correct the end, or describe what it leads to.',
	],
	'cable-twice': ({count}) => [`stands in the list ${count} times`, 'Give each cable an id of its own.'],
	'ends-reversed': ({from, to}, {name}) => [
		`entered from ${name(from)} to ${name(to)}, but the first only takes a signal`,
		'Swap its ends, on paper or in the room.',
	],
	'ends-alike': ({from, to, both}, {name}) => [
		`joins two ${both}, ${name(from)} and ${name(to)}`,
		both === 'outputs'
			? 'Nothing will be heard, and two outputs can harm each other: disconnect it.'
			: 'Nothing will be heard: one of its ends belongs to an output.',
	],
	'channels-crossed': ({output, speaker}, {name}) => [
		`runs from the receiver’s ${name(output)} to the speaker of ${name(speaker)}`,
		`Move it to ${name(speaker)} on the receiver, or correct the list.`,
	],
	'polarity-reversed': () => [
		'plus and minus are swapped',
		'With everything off, swap them at one end only.',
	],
	'label-twice': ({label, other}) => [
		`carries the same label as ${other}, “${label}”`,
		'Give one of them another.',
	],
	'run-too-short': ({cutMetres, straightMetres}, {length}) => [
		`cut to ${length(cutMetres)}, but its ends stand ${length(straightMetres)} apart in a straight line`,
		'Measure the route again.',
	],
	'run-too-long': ({cutMetres, impedanceOhms}, {length}) => [
		`${length(cutMetres)} at ${impedanceOhms} Ω is more than any usual conductor carries within 5 %`,
		'Shorten the route, or move the amplifier.',
	],
	'conductor-thin': ({conductor, needs, cutMetres, impedanceOhms}, {length}) => [
		`${conductorText(conductor)} is thin for ${length(cutMetres)} at ${impedanceOhms} Ω`,
		`${conductorText(needs)} keeps the loop within 5 % of the impedance.`,
	],
	separation: ({mains, parallelMetres, gapMetres, usualMetres}, {length}) => [
		`runs ${length(parallelMetres)} beside ${mains}, ${length(gapMetres)} apart`,
		`${length(usualMetres)} is the usual distance (EN 50174-2:2000, data cables).`,
		'Part them, or cross at a right angle.',
	],
	'parallel-unknown': ({index}) => [
		`named in parallelRuns[${index}], but not among the cables`,
		'Correct the id.',
	],
	'load-without-outlet': ({outlet}) => [
		`hangs on “${outlet}”, which is not among the outlets`,
		'Enter that outlet, or name another.',
	],
	'outlet-unrated': () => [
		'no rating entered',
		'Read amperes or watts off its plate before more is plugged in.',
	],
	'outlet-overloaded': ({watts, share, limit}) => [
		loadText(watts, share, limit),
		'Move a load to another circuit.',
		electrician,
	],
	'outlet-close': ({watts, share, limit}) => [
		`${loadText(watts, share, limit)}, above the 80 % usual for a load that lasts`,
		electrician,
	],
	'lengths-unknown': ({unknown, of}) => [
		`${unknown} of ${of} cables have no length yet`,
		'Lay the tape along each route, or enter where the receiver stands and the runs are estimated.',
	],
};
