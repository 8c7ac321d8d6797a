import {formatLength, metresPerFoot, metresPerInch, shownStepMetres} from './lengthFormat.ts';
import {badFraction, examples, lengthRefusal} from './lengthRefusal.ts';
import {bareUnits, inUnit, metricNames, type Typed, words} from './lengthTyped.ts';
import type {LengthUnit} from './lengthUnit.ts';
import {longestText, plainText, type Quantity, quantityOf, quantityPattern} from './quantity.ts';

export {formatLength, metresPerFoot, metresPerInch, shownStepMetres} from './lengthFormat.ts';

/** Nothing in a home room is farther away; a longer reading is a slip of the unit until confirmed. */
const usualLimitMetres = 30;
/** Largest length that a profile can hold. */
const largestMetres = 1000;
/** In feet and inches, a bare number above this is hardly meant in feet. */
const largestBareFeet = 30;

export type LengthChoice = {readonly metres: number; readonly readAs: string};
export type LengthReading =
	| {readonly kind: 'ok'; readonly metres: number; readonly readAs: string; readonly stepMetres?: number}
	| {readonly kind: 'ask'; readonly question: string; readonly choices: readonly LengthChoice[]}
	| {readonly kind: 'no'; readonly why: string};

const feetMark = String.raw`(?:'|ft\.?|feet|foot)`;
const inchMark = String.raw`(?:"|in\.?|inch|inches)`;
const q = quantityPattern;
const patterns = {
	feetInches: new RegExp(`^(${q}) ?${feetMark} ?-? ?(${q}) ?${inchMark}?$`),
	feet: new RegExp(`^(${q}) ?${feetMark}$`),
	inches: new RegExp(`^(${q}) ?${inchMark}$`),
	metric: new RegExp(`^(${q}) ?(m|cm|mm|(?:centi|milli)?met(?:re|er)s?)$`),
	metresCentimetres: /^(\d+) ?m ?(\d+(?:[.,]\d+)?) ?cm$/,
	dashed: new RegExp(String.raw`^(\d+) ?- ?(${q})(?: ?${inchMark})?$`),
	spaced: new RegExp(String.raw`^(\d+) (${q}) ?${inchMark}?$`),
	bare: new RegExp(`^(${q})$`),
};

/**
Reads a length as people type it and says how it was read.

@param text - `9' 4 1/2"`, `9ft 4.5in`, `9-4.5`, `112.5"`, `2.86 m`, `286cm`, `2,86` and their like; a comma is a decimal sign.
@param unit - Unit of a bare number; in feet and inches that is feet up to 30, above that the answer is a question.
@param context - `limitMetres`: length beyond which to ask (twice the room's diagonal); 30 m is the limit in any case.
@returns `ok` with metres; `ask` with what it may have meant; `no` with a sentence. Never throws.
*/
export function readLength(
	text: string,
	unit: LengthUnit,
	context: {readonly limitMetres?: number} = {},
): LengthReading {
	if (text.length > longestText) return no('This text is too long for a length.');
	const plain = plainText(text);
	const refusal = lengthRefusal(plain);
	if (refusal) return no(refusal);

	const show = (typed: Typed): LengthChoice => {
		const shown = formatLength(typed.metres, unit, {
			stepMetres: Math.min(typed.stepMetres, shownStepMetres(unit)),
		});
		const typedAs = typed.typedAs.trim();
		// 31 m needs no "= 31.00 m" beside it.
		const isOwnUnit = shown.replace(/[\d.]+/, '') === typedAs.replace(/[\d.]+/, '');
		return {metres: typed.metres, readAs: shown === typedAs || isOwnUnit ? typedAs : `${typedAs} = ${shown}`};
	};

	const limitMetres = Math.min(usualLimitMetres, context.limitMetres ?? usualLimitMetres);
	const finish = (typed: Typed, others: readonly Typed[] = []): LengthReading => {
		if (typed.metres > largestMetres && others.every(other => other.metres > limitMetres)) {
			return no(
				`${typed.typedAs.trim()} is more than ${formatLength(largestMetres, unit)}. No room is that long. Check the unit.`,
			);
		}

		if (typed.metres <= limitMetres) return {kind: 'ok', ...show(typed), stepMetres: typed.stepMetres};
		const choices = [...others.filter(other => other.metres <= limitMetres), typed].filter(
			({metres}) => metres <= largestMetres,
		);
		return {
			kind: 'ask',
			question: `${show(typed).readAs} is longer than ${formatLength(limitMetres, unit)}, more than this room can hold. Which was meant?`,
			choices: choices.map(choice => show(choice)),
		};
	};

	const ask = (question: string, typed: readonly Typed[]): LengthReading => ({
		kind: 'ask',
		question,
		choices: typed.filter(({metres}) => metres <= largestMetres).map(choice => show(choice)),
	});
	const joined = (feet: Quantity, inches: Quantity): Typed => ({
		metres: ((feet.value * 12 + inches.value) * 254) / 10_000,
		stepMetres: inches.step * metresPerInch,
		typedAs: `${words(feet)}′ ${words(inches)}″`,
	});
	const feetThenInches = (feetText: string, inchText: string): LengthReading => {
		const feet = quantityOf(feetText);
		const inches = quantityOf(inchText);
		if (!feet || !inches) return no(badFraction);
		if (feet.step !== 1)
			return no('Feet with a decimal or a fraction, and inches after them: give one or the other.');
		const typed = joined(feet, inches);
		if (inches.value >= 12 && typed.metres <= largestMetres) {
			return ask(
				`${words(inches)} inches after the feet make another foot. Was ${show(typed).readAs} meant?`,
				[typed],
			);
		}

		return finish(typed);
	};

	let match = patterns.feetInches.exec(plain);
	if (match) return feetThenInches(match[1]!, match[2]!);

	match = patterns.metresCentimetres.exec(plain);
	if (match) {
		const centimetres = quantityOf(match[2]!)!;
		if (centimetres.value >= 100) return no('100 cm or more after the metres: give one or the other.');
		const value = Number(match[1]) * 100 + centimetres.value;
		return finish({
			...inUnit({...centimetres, value}, 0.01, ' cm'),
			typedAs: `${match[1]} m ${words(centimetres)} cm`,
		});
	}

	for (const [pattern, metres, name] of [
		[patterns.feet, metresPerFoot, '′'],
		[patterns.inches, metresPerInch, '″'],
	] as const) {
		match = pattern.exec(plain);
		if (!match) continue;
		const quantity = quantityOf(match[1]!);
		return quantity ? finish(inUnit(quantity, metres, name)) : no(badFraction);
	}

	match = patterns.metric.exec(plain);
	if (match) {
		const quantity = quantityOf(match[1]!);
		const [metres, name] = metricNames[match[2]!.length > 2 ? match[2]!.replace(/s$/, '') : match[2]!]!;
		return quantity ? finish(inUnit(quantity, metres, ` ${name}`)) : no(badFraction);
	}

	match = patterns.dashed.exec(plain);
	if (match) {
		if (!match[2]!.includes('/') || match[2]!.includes(' ')) return feetThenInches(match[1]!, match[2]!);
		const inches = quantityOf(match[2]!);
		const mixed = quantityOf(`${match[1]} ${match[2]}`);
		if (!inches || !mixed) return no(badFraction);
		return ask(`A dash may stand between feet and inches, or before a fraction. Which was meant?`, [
			joined({value: Number(match[1]), step: 1, hasDecimals: false}, inches),
			inUnit(mixed, metresPerInch, '″'),
		]);
	}

	match = patterns.bare.exec(plain);
	if (match) return bare(quantityOf(match[1]!), unit, {ask, finish});

	match = patterns.spaced.exec(plain);
	const inches = match && quantityOf(match[2]!);
	if (match && inches) {
		// A lone fraction may belong to the feet: 9 1/2 is asked about, 9 4 and 9 4 1/2 are not.
		const isPlain = !match[2]!.includes('/') || match[2]!.includes(' ');
		if (unit === 'ft-in' && isPlain) return feetThenInches(match[1]!, match[2]!);
		return ask('Two numbers with a space between. Are these feet and inches?', [
			joined({value: Number(match[1]), step: 1, hasDecimals: false}, inches),
		]);
	}

	return no(`This is not a length that can be read. Type it like ${examples[unit]}.`);
}

function no(why: string): LengthReading {
	return {kind: 'no', why};
}

function bare(
	quantity: Quantity | undefined,
	unit: LengthUnit,
	{
		ask,
		finish,
	}: {
		readonly ask: (question: string, typed: readonly Typed[]) => LengthReading;
		readonly finish: (typed: Typed, others?: readonly Typed[]) => LengthReading;
	},
): LengthReading {
	if (!quantity) return no(badFraction);
	const typed = inUnit(quantity, ...bareUnits[unit]);
	const centimetres = inUnit(quantity, 0.01, ' cm');
	const millimetres = inUnit(quantity, 0.001, ' mm');
	const inches = inUnit(quantity, metresPerInch, '″');
	if (unit === 'ft-in' && quantity.value > largestBareFeet) {
		const choices = [inches, centimetres].filter(({metres}) => metres <= largestMetres);
		if (choices.length === 0 || quantity.value > 1e6)
			return no('No room is that long. Check the number and give its unit.');
		return ask(`${words(quantity)} without a unit is too much for feet. Which was meant?`, choices);
	}

	// Lengths in centimetres have three digits as a rule; 2.86 is rather meant in metres.
	if (unit === 'cm' && quantity.step < 0.05 && quantity.value < 30) {
		return ask(`${words(quantity)} without a unit: metres or centimetres?`, [
			inUnit(quantity, 1, ' m'),
			typed,
		]);
	}

	return finish(typed, unit === 'ft' ? [inches, centimetres] : [centimetres, millimetres]);
}
