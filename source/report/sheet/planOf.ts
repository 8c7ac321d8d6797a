import {isOverhead} from '../../profile/channels.ts';
import {formatLength} from '../../profile/units/length.ts';
import type {SheetData} from '../../study/comparison/sheetData.ts';
import type {SvgPlan, SvgPoint} from './planSvg.ts';

/** The drawing for the page, or undefined where the room's size or the places are not known. */
export function svgPlanOf({profile, plan}: SheetData): SvgPlan | undefined {
	const {widthMetres, lengthMetres} = plan?.room ?? {};
	if (!plan || widthMetres === undefined || lengthMetres === undefined) return undefined;
	const unit = profile.lengthUnit ?? 'm';
	return {
		widthMetres,
		lengthMetres,
		widthText: formatLength(widthMetres, unit),
		lengthText: formatLength(lengthMetres, unit),
		screenWidthMetres: profile.screen?.widthMetres,
		points: plan.points.map(({id, kind, x, y}): SvgPoint => {
			const isAbove = kind === 'speaker' && isOverhead(id);
			const seat = profile.seats.find(each => each.id === id);
			return {label: kind === 'screen' ? '' : (seat?.name ?? id), kind: isAbove ? 'overhead' : kind, x, y};
		}),
	};
}
