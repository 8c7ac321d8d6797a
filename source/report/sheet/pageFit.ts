/** How much there is on the page. */
export type PageAmount = {
	/** Rows of what is typed into boxes, heads and captions included. */
	readonly dialRows: number;
	/** Longest row of it, characters. */
	readonly dialCells: number;
	/** Lines under those tables: low-pass, master volume. */
	readonly dialLines: number;
	readonly places: number;
	/** Longest row of the places, characters. */
	readonly placesCells: number;
	readonly cables: number;
	readonly warnings: number;
	/** Height over width of the drawing; absent where there is none. */
	readonly planShape?: number;
	/** Height that a recorded curve takes over the whole width, millimetres; absent where there is none. */
	readonly curveMm?: number;
};

/** Sizes that let a page's content fill one sheet: letters in points, the drawing's width in millimetres. */
export type PageFit = {readonly dialPt: number; readonly smallPt: number; readonly planMm: number};

/** Height within the margins of a Letter sheet, the shorter of the two, less a reserve for other letter faces, millimetres. */
const pageMm = 263 - 6;
/** Width within the margins of an A4 sheet, the narrower of the two, millimetres. */
const pageWidthMm = 188;
const mmPerPoint = 25.4 / 72;
/** Height of a table row over its letters' size: leading and rule. */
const rowHeight = 1.42;
/** Mean width of a character over its size in the usual sans faces, bold ones included. */
const cellShare = 0.56;
const largestDialPt = 22;
const largestPlanMm = 96;
/** A drawing this wide is worth smaller letters beside it, millimetres. */
const wishedPlanMm = 66;
const smallestPlanMm = 40;
/** Between the places and the drawing, millimetres. */
const gapMm = 5;
/** Head, foot with cautions, and space between blocks, millimetres. */
const aroundMm = 37;

/** Points; below the first few nothing is legible at arm's length any more, but a crowded page still holds everything. */
const sizes = [11, 10.5, 10, 9.5, 9, 8.5, 8, 7.5, 7, 6.5, 6];
const leastLegiblePt = 8.5;

/**
The largest letters with which everything still fits one page: first what is typed into boxes, legible at arm's length, then the
drawing, then the rest. What a sheet has more than a Letter one goes between the blocks.

A row takes 1.42 times its letters' size; counted on A4 and Letter in print.
*/
export function pageFit(amount: PageAmount): PageFit {
	const {
		dialRows,
		dialCells,
		dialLines,
		places,
		placesCells,
		cables,
		warnings,
		planShape,
		curveMm = 0,
	} = amount;
	const widestPt = Math.min(largestDialPt, pageWidthMm / (Math.max(1, dialCells) * cellShare * mmPerPoint));
	const dialMmAt = (dialPt: number) => Math.max(1, dialRows) * dialPt * mmPerPoint * rowHeight;
	const fitOf = (smallPt: number): PageFit | undefined => {
		const lineMm = smallPt * mmPerPoint * rowHeight;
		const placesMm = places === 0 ? 0 : (places + 2.5) * lineMm;
		const cablesMm = cables === 0 ? 0 : (Math.ceil(cables / 2) + 1.5) * lineMm;
		const freeMm = pageMm - aroundMm - curveMm - cablesMm - warnings * 2 * lineMm - dialLines * lineMm * 1.4;
		const leastPt = Math.min(widestPt, smallPt * 1.4);
		if (dialMmAt(leastPt) + placesMm > freeMm) return undefined;
		const besideMm = pageWidthMm - gapMm - placesCells * cellShare * smallPt * mmPerPoint;
		const widestPlanMm = Math.min(largestPlanMm, places === 0 ? largestPlanMm : besideMm);
		// The drawing takes what the wide letters leave, and no less than the places beside it.
		const planMmAt = (dialPt: number) =>
			planShape === undefined ? 0 : Math.min(widestPlanMm, (freeMm - dialMmAt(dialPt) - 6) / planShape);
		const heights = [1, 0.75, 0.5, 0.25, 0].map(share => leastPt + share * (widestPt - leastPt));
		const dialPt =
			heights.find(
				points =>
					dialMmAt(points) + placesMm <= freeMm &&
					(planShape === undefined || planMmAt(points) >= Math.min(wishedPlanMm, widestPlanMm)),
			) ?? leastPt;
		const planMm = planMmAt(dialPt);
		if (planShape !== undefined && planMm < smallestPlanMm) return undefined;
		const blockMm = Math.max(placesMm, planShape === undefined ? 0 : planMm * planShape + 6);
		return {dialPt: Math.min(widestPt, (dialPt * (freeMm - blockMm)) / dialMmAt(dialPt)), smallPt, planMm};
	};

	const fits = sizes.flatMap(size => fitOf(size) ?? []);
	const legible = fits.filter(({smallPt}) => smallPt >= leastLegiblePt);
	return (
		legible.find(({planMm}) => planShape === undefined || planMm >= wishedPlanMm) ??
		[...legible].sort((a, b) => b.planMm - a.planMm)[0] ??
		fits[0] ?? {
			dialPt: sizes.at(-1)! * 1.25,
			smallPt: sizes.at(-1)!,
			planMm: planShape === undefined ? 0 : smallestPlanMm,
		}
	);
}

/** What is typed in stays legible at arm's length from here on, points. */
const leastDialPt = 12;

/**
Whether a page still has room for a curve: everything else legible, and the floor plan no smaller than is wished for.

@param amount - Of the page with its curve.
*/
export function hasRoomForCurve(amount: PageAmount): boolean {
	const {dialPt, smallPt, planMm} = pageFit(amount);
	const {planMm: planMmAlone} = pageFit({...amount, curveMm: 0});
	return dialPt >= leastDialPt && smallPt >= leastLegiblePt && planMm >= Math.min(wishedPlanMm, planMmAlone);
}
