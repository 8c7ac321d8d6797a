import type {Profile, TapeReading} from '../../profile/types.ts';
import type {Remark} from '../calibration/result.ts';
import {adjustNetwork} from './adjust.ts';
import {lengthText, readingText} from './names.ts';
import {suspectText} from './readingRemarks.ts';
import type {NetworkResult} from './result.ts';

/** No wall-to-wall or seat-to-speaker reading in a home is longer, metres. */
const longestMetres = 30;

/** What the remaining readings say of a new one that they confirm. */
function confirmation(profile: Profile, result: NetworkResult, index: number): Remark[] {
	const reading = result.readings[index]!;
	if (reading.redundancy === undefined || reading.redundancy < 0.3) return [];
	return [
		{
			kind: 'note',
			code: 'tape-confirmed',
			about: reading.from,
			text: `The other readings give ${lengthText(profile, reading.adjustedMetres!)}: it fits.`,
		},
	];
}

/**
What is to be said about a reading while the tape is still in hand.

@param profile - The profile, with or without the new reading.
@param newReading - The reading just taken: the last of the profile's list, or one that is not in it yet.
@returns Remarks on this reading alone, problems first; a note where the others confirm it; none where nothing is known.
*/
export function remarkOnNetwork(profile: Profile, newReading: TapeReading): readonly Remark[] {
	const tape = profile.tape ?? [];
	const known = tape.indexOf(newReading);
	const index = known >= 0 ? known : tape.length;
	const whole = known >= 0 ? profile : {...profile, tape: [...tape, newReading]};
	if (newReading.metres > longestMetres) {
		return [
			{
				kind: 'problem',
				code: 'tape-too-long',
				about: newReading.from,
				text: `${readingText(whole, newReading)}: longer than any room. Check the unit.`,
			},
		];
	}

	const result = adjustNetwork(whole);
	const {status} = result.readings[index]!;
	if (status === 'unusable') {
		return result.remarks
			.filter(({text}) => text.startsWith(`${readingText(whole, newReading)}:`))
			.slice(0, 1);
	}

	const own = result.suspects.find(suspect => suspect.index === index);
	if (own)
		return [{kind: 'problem', code: 'tape-blunder', about: newReading.from, text: suspectText(whole, own)}];
	// The new reading may have shown that an older one is wrong, or be as likely the wrong one itself.
	const related = result.suspects.filter(
		({index: at, alternatives}) =>
			alternatives.includes(index) ||
			[newReading.from, newReading.to].some(
				end =>
					[whole.tape![at]!.from, whole.tape![at]!.to].includes(end) &&
					end !== 'floor' &&
					!end.startsWith('wall:'),
			),
	);
	const before = related.length > 0 && known < 0 ? adjustNetwork(profile) : undefined;
	const shown = related.filter(({index: at}) => !before?.suspects.some(suspect => suspect.index === at));
	if (shown.length > 0) {
		return shown.map(
			(suspect): Remark => ({
				kind: 'problem',
				code: 'tape-blunder-before',
				about: whole.tape![suspect.index]!.from,
				text: suspectText(whole, suspect),
			}),
		);
	}

	return confirmation(whole, result, index);
}
