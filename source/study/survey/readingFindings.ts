import {finding} from '../../profile/finding.ts';
import type {TapeReading} from '../../profile/types.ts';
import type {ReadingFacts, SurveyFinding} from './facts.ts';
import type {Unusable} from './observations.ts';
import type {Suspect} from './result.ts';

const readingFacts = ({from, to, metres}: TapeReading): ReadingFacts => ({from, to, metres});

function suspectFinding(tape: readonly TapeReading[], suspect: Suspect): SurveyFinding {
	const reading = tape[suspect.index]!;
	const {expectedMetres, expectedSigmaMetres, errorMetres, causes} = suspect;
	const others = suspect.alternatives.map(index => ({from: tape[index]!.from, to: tape[index]!.to}));
	const alternatives = [...new Map(others.map(one => [`${one.from} ${one.to}`, one])).values()];
	return finding('problem', 'tape-blunder', [reading.from], {
		...readingFacts(reading),
		expectedMetres,
		expectedSigmaMetres,
		errorMetres,
		causes,
		alternatives,
	});
}

function unusableFinding(tape: readonly TapeReading[], {reading: index, why}: Unusable): SurveyFinding {
	const reading = tape[index]!;
	const facts = readingFacts(reading);
	const about = [reading.from];
	switch (why.code) {
		case 'tape-unknown-end':
			return finding('problem', why.code, about, {...facts, end: why.end, isLfe: why.isLfe});
		case 'tape-zero':
			return finding('problem', why.code, about, {...facts, arePlanes: why.arePlanes});
		default:
			return finding('problem', why.code, about, facts);
	}
}

/** More findings on single readings than this are not read; a file with so many is of another kind. */
const mostFindings = 20;

/** A finding for each reading that cannot be right or cannot be used. */
export function readingFindings(
	tape: readonly TapeReading[],
	suspects: readonly Suspect[],
	unusable: readonly Unusable[],
): SurveyFinding[] {
	const count = Math.max(0, suspects.length - mostFindings) + Math.max(0, unusable.length - mostFindings);
	return [
		...suspects.slice(0, mostFindings).map(suspect => suspectFinding(tape, suspect)),
		...unusable.slice(0, mostFindings).map(one => unusableFinding(tape, one)),
		...(count > 0 ? [finding('problem', 'tape-more', [], {count})] : []),
	];
}
