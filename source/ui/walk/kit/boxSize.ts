import type {Profile} from '../../../profile/types.ts';
import {formatLength, readLength} from '../../../profile/units/length.ts';
import type {BoxSize} from '../../../study/arrangement/stakeOut.ts';
import {lengthUnitOf} from '../lengthUnits.ts';
import type {Prompt} from '../prompt/prompt.ts';
import {valuePrompt} from '../prompt/single.ts';

type SizeReading = {readonly widthMetres: number; readonly depthMetres: number; readonly readAs: string};

/** The size of a box, asked once for both: then distances go to what a tape can touch. */
export function boxSizePrompt(
	profile: Profile,
	{id, name, now}: {readonly id: string; readonly name: string; readonly now: BoxSize},
	put: (profile: Profile, size: BoxSize) => Profile,
): Prompt<Profile> {
	const unit = lengthUnitOf(profile);
	const {boxWidthMetres: width, boxDepthMetres: depth} = now;
	return valuePrompt<Profile, SizeReading>({
		id,
		stop: 'kit',
		question: `${name}: width and depth of its box`,
		about: 'Such as 40cm x 45cm: across its front, then from front to back.',
		explain: 'Where it is put by a plan, lengths then go to its side and its back, which a tape can touch.',
		shown:
			width === undefined || depth === undefined
				? undefined
				: `${formatLength(width, unit)} × ${formatLength(depth, unit)}`,
		read(text) {
			// A stroke works too, but fractions of an inch have one of their own.
			const between = /[x×]/i.test(text) ? /\s*[x×]\s*/i : '/';
			const parts = text.split(between).map(part => readLength(part.trim(), unit));
			const [across, along] = parts;
			if (parts.length !== 2 || across?.kind !== 'ok' || along?.kind !== 'ok')
				return {kind: 'no', why: 'Two lengths with an x between them, such as 40cm x 45cm.'};
			if ([across, along].some(({metres}) => metres < 0.05 || metres > 3))
				return {
					kind: 'no',
					why: `${across.readAs} by ${along.readAs}: no box is that size. Look at the unit.`,
				};
			return {
				kind: 'ok',
				widthMetres: across.metres,
				depthMetres: along.metres,
				readAs: `${across.readAs} wide, ${along.readAs} deep`,
			};
		},
		put: (subject, {widthMetres, depthMetres}) =>
			put(subject, {boxWidthMetres: widthMetres, boxDepthMetres: depthMetres}),
	});
}
