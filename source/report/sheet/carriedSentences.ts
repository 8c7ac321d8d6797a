import {nameOf} from '../../profile/names.ts';
import {formatLength} from '../../profile/units/length.ts';
import type {SheetData} from '../../study/comparison/sheetData.ts';
import {placeInTapeTerms} from '../arrangement/placeText.ts';

/** What was planned against what stands, a sentence a thing; for what does not stand yet, where it goes. */
export function carriedSentences({profile, carried, standing}: SheetData): string[] {
	if (!carried) return [];
	const unit = profile.lengthUnit ?? 'm';
	const {room} = profile;
	const size = {
		widthMetres: standing.widthMetres ?? room.widthMetres ?? Number.POSITIVE_INFINITY,
		lengthMetres: standing.lengthMetres ?? room.lengthMetres ?? Number.POSITIVE_INFINITY,
	};
	return [
		...carried.standing.map(
			({id, plannedAt, offMetres, isGoodEnough}) =>
				`${nameOf(profile, id)}: planned ${placeInTapeTerms(plannedAt, size, unit)}; stands ${formatLength(offMetres, unit, {stepMetres: 0.01})} off${isGoodEnough ? ', good enough' : ', worth moving'}`,
		),
		...carried.open.map(
			({id, at}) => `${nameOf(profile, id)}: planned ${placeInTapeTerms(at, size, unit)}; not read there yet`,
		),
	];
}
