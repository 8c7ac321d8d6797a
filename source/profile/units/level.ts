import {type Ask, type No, numberText, readScaled, unknownUnit} from './scaled.ts';

/** Readings between these need no question: a quiet room at night, and what a home system can do. */
const usualRangeDb = [20, 120] as const;
/** From here on the ears are at risk within a quarter of an hour. */
const cautionAboveDb = 100;
/** Loudest reading taken at all; a meter for homes ends below it. */
const largestDb = 140;

export type LevelChoice = {readonly decibels: number; readonly readAs: string};
export type LevelReading =
	| (LevelChoice & {
			readonly kind: 'ok';
			/** Weighting, where one was typed with the unit. */
			readonly weighting?: 'A' | 'C' | 'Z';
			/** A caution to show with the reading. */
			readonly caution?: string;
	  })
	| (Ask<LevelChoice> & {readonly caution?: string})
	| No;

/**
Caution for the ears. 85 dB(A) for 8 hours is the limit for work, halved in time with each 3 dB: 100 dB for a quarter of an hour.

@see NIOSH 98-126, Criteria for a Recommended Standard: Occupational Noise Exposure, 1998, section 1.1.
*/
export const loudCaution = 'Above 100 dB the ears are at risk within minutes. Turn down, or wear protection.';

const weightings: Readonly<Record<string, 'A' | 'C' | 'Z'>> = {a: 'A', c: 'C', z: 'Z'};

/**
Reads a level from the meter: `74.2`, `74,2`, `74 dB`, `74.2 dBC`.

@returns `ok` from 20 to 120 dB, with a caution above 100; a question where the decimal sign seems to be lost or the
reading is outside that range; a sentence where it cannot be a level. Never throws.
*/
export function readLevel(text: string): LevelReading {
	const example = '74.2';
	const scaled = readScaled(text, example);
	if ('kind' in scaled) return scaled;
	const unit = /^(?:db)?[( ]*(spl)?[( ]*([acz])?\)*(spl)?\.?$/.exec(scaled.unit);
	if (!unit) return unknownUnit(scaled.unit, `${example} or 74.2 dB`);
	const {value} = scaled;
	const weighting = weightings[unit[2] ?? ''];
	const choice = (decibels: number): LevelChoice => ({
		decibels,
		readAs: `${numberText(decibels, 2)} dB${weighting ? ` ${weighting}` : ''}`,
	});
	if (value < 0) return {kind: 'no', why: 'A level at the seat is not negative. Read the meter again.'};
	const isUsual = (decibels: number) => decibels >= usualRangeDb[0] && decibels <= usualRangeDb[1];
	if (isUsual(value)) {
		return {
			kind: 'ok',
			...choice(value),
			...(weighting ? {weighting} : {}),
			...(value > cautionAboveDb ? {caution: loudCaution} : {}),
		};
	}

	// The decimal sign was forgotten, or put one place off.
	const moved = [10, 1 / 10, 1 / 100].map(factor => Math.round(value * factor * 1000) / 1000).filter(isUsual);
	if (moved.length > 0) {
		const isPossible = value <= largestDb;
		return {
			kind: 'ask',
			question: `Did you mean ${numberText(moved[0]!, 2)}?`,
			choices: [...moved, ...(isPossible ? [value] : [])].map(choice),
			...(isPossible && value > cautionAboveDb ? {caution: loudCaution} : {}),
		};
	}

	if (value > largestDb)
		return {
			kind: 'no',
			why: `${numberText(value, 2)} dB is no level that a room or its owner survives. Read the meter again.`,
		};
	if (value > usualRangeDb[1]) {
		return {
			kind: 'ask',
			question: `${numberText(value, 2)} dB hurts at once. Was it really read?`,
			choices: [choice(value)],
			caution: loudCaution,
		};
	}

	return {
		kind: 'ask',
		question: `${numberText(value, 2)} dB is quieter than meters can read. Take it all the same?`,
		choices: [choice(value)],
	};
}
