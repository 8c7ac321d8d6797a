import {formatNumber} from '../../profile/units/decimalText.ts';
import type {AngleOff, PlacementFacts} from '../../study/placement/facts.ts';
import {degreesText} from '../placement/degreesText.ts';
import type {Say} from './say.ts';
import {asSentence, type Sentences, type Words} from './sentences.ts';
import {wayText} from './way.ts';

function angleText({
	what,
	measuredDegrees,
	excessDegrees,
	rangeDegrees,
	nominalDegrees,
	flaggedDegrees,
}: AngleOff): string {
	const measured = `${what} ${degreesText(measuredDegrees)}`;
	if (!rangeDegrees)
		return `${measured}, more than ${flaggedDegrees}° from ${degreesText(nominalDegrees)} with no published range`;
	// Below a degree the excess would read as nothing.
	const excess = `${formatNumber(excessDegrees, excessDegrees < 1 ? 1 : 0)}°`;
	const [low, high] = rangeDegrees;
	return `${measured}, ${excess} outside the range ${degreesText(low)} to ${degreesText(high)}`;
}

function remedyText(remedy: PlacementFacts['angle-outside']['remedy'], say: Say): string {
	switch (remedy) {
		case 'fixed':
			return 'It cannot be moved; only moving the seat changes it.';
		case 'tilt':
			return 'Tilt it at the ear; a place that is right would be outside the room or in front of the picture.';
		case 'none':
			return 'No place in reach inside the room brings it right.';
		default:
			return asSentence(wayText(remedy, say));
	}
}

function offAngles(
	{angles, source, isCertain, isChecked, remedy, isHigh}: PlacementFacts['angle-outside'],
	say: Say,
): Words {
	return [
		`${angles.map(angleText).join('; ')} (${source})`,
		...(isChecked
			? []
			: ['Not checked yet: a slip of a foot in a reading would not show. Take the control first.']),
		...(isCertain || !isChecked ? [] : ['The tape is too uncertain here to be sure.']),
		remedyText(remedy, say),
		...(isHigh && typeof remedy === 'object'
			? ['Overhead: a steady ladder, a second person, fixings as the maker and local codes ask.']
			: []),
	];
}

function differencesText(differences: PlacementFacts['pair-distance']['differences'], {length}: Say): string {
	const sizes = differences.map(
		({what, unit, size}) => `${what} by ${unit === 'degrees' ? degreesText(size) : length(size)}`,
	);
	return `differ in ${sizes.join(', ')}`;
}

export const placementSentences: Sentences<PlacementFacts> = {
	'outside-room': () => ['this place is outside the room'],
	'angle-outside': offAngles,
	'angle-flagged': offAngles,
	'seat-instead': ({way}, say) => [
		'both fronts are off in the same sense',
		`Or leave them and move the seat: ${wayText(way, say)}.`,
		'Try with --move what that does to the others.',
	],
	'pair-uneven': ({differences, remedy}, say) => [
		differencesText(differences, say),
		...(remedy === 'none'
			? ['Only moving one of them repairs that.']
			: 'first' in remedy
				? [`First bring ${say.name(remedy.first)} into its range; then look again.`]
				: ['Delays do not repair that.', `${say.name(remedy.moves)}: ${wayText(remedy, say)}.`]),
	],
	'pair-distance': ({differences}, say) => [
		differencesText(differences, say),
		'Delays and trims make up for it.',
	],
	'screen-off-normal': ({offNormalDegrees, limitDegrees}) => [
		`${degreesText(offNormalDegrees)} off the screen’s middle line`,
		`A review room keeps within ${limitDegrees}° (SMPTE 196M-2003).`,
	],
	'centre-height': ({apartDegrees}) => [
		`heard ${degreesText(Math.abs(apartDegrees))} ${apartDegrees < 0 ? 'below' : 'above'} the picture’s middle`,
		'Nearer to the picture, tilted at the ear, is better (common practice, no source).',
	],
};
