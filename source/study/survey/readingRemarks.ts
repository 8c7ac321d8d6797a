import {listed} from '../../profile/names.ts';
import type {Profile} from '../../profile/types.ts';
import type {Remark} from '../calibration/result.ts';
import {causesText} from './causes.ts';
import {endsText, lengthText, readingText} from './names.ts';
import type {Unusable} from './observations.ts';
import type {Suspect} from './result.ts';

/** Step that an uncertainty allows to be shown: whole centimetres or inches above a centimetre. */
const shownStep = (profile: Profile, sigmaMetres: number) =>
	sigmaMetres < 0.01 ? undefined : (profile.lengthUnit ?? 'm').startsWith('ft') ? 0.0254 : 0.01;

/** What is wrong with a reading, the evidence, the likely cause and what to do, in one or two lines. */
export function suspectText(profile: Profile, suspect: Suspect): string {
	const reading = profile.tape![suspect.index]!;
	const step = shownStep(profile, suspect.expectedSigmaMetres);
	const expected = lengthText(profile, suspect.expectedMetres, step);
	const sign = suspect.errorMetres > 0 ? 'longer' : 'shorter';
	const difference = lengthText(profile, Math.abs(suspect.errorMetres), step);
	const evidence = `${readingText(profile, reading)}: ${difference} ${sign} than the other readings allow, which give ${expected}.`;
	const cause = suspect.causes.length > 0 ? ` Perhaps ${causesText(profile, suspect.causes)}.` : '';
	const others = suspect.alternatives.map(index => endsText(profile, profile.tape![index]!));
	const also = others.length > 0 ? ` It could also be ${listed([...new Set(others)])}.` : '';
	const again = others.length > 0 ? ` Retake ${endsText(profile, reading)} first.` : ` Retake it.`;
	return evidence + cause + also + again;
}

function unusableText(profile: Profile, {reading, why}: Unusable): string {
	return `${readingText(profile, profile.tape![reading]!)}: ${why}.`;
}

/** More sentences on single readings than this are not read; a file with so many is of another kind. */
const mostSentences = 20;

/** A sentence for each reading that cannot be right or cannot be used. */
export function readingRemarks(
	profile: Profile,
	suspects: readonly Suspect[],
	unusable: readonly Unusable[],
): Remark[] {
	const problem = (index: number, code: string, text: string): Remark => ({
		kind: 'problem',
		code,
		about: profile.tape![index]!.from,
		text,
	});
	const left = Math.max(0, suspects.length - mostSentences) + Math.max(0, unusable.length - mostSentences);
	return [
		...suspects
			.slice(0, mostSentences)
			.map(suspect => problem(suspect.index, 'tape-blunder', suspectText(profile, suspect))),
		...unusable
			.slice(0, mostSentences)
			.map(one => problem(one.reading, one.code, unusableText(profile, one))),
		...(left > 0
			? [
					{
						kind: 'problem',
						code: 'tape-more',
						text: `${left} more readings like these are not listed.`,
					} as const,
				]
			: []),
	];
}
