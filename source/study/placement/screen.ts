import type {Profile} from '../../profile/types.ts';
import type {NetworkResult} from '../survey/result.ts';
import {isKnown} from './angles.ts';

const degrees = 180 / Math.PI;
/** The usual shape of a home picture; only used where width or height is missing. */
const usualShape = 16 / 9;

/** A published or remembered viewing angle. */
export type Recommendation = {readonly degrees: number; readonly what: string; readonly source: string};

/** Horizontal angles that publications name. The angle of EG 18 was seen in an encyclopaedia; the others follow from the definitions. */
export const recommendations: readonly Recommendation[] = [
	{degrees: 30, what: 'least angle, farthest seat', source: 'SMPTE EG 18-1994'},
	{
		degrees: 31.2,
		what: '1080 lines resolved, a pixel to an arc-minute',
		source: 'ITU-R BT.2022',
	},
	{degrees: 33, what: 'picture at three picture heights', source: 'ITU-R BS.775-3, screen 1'},
	{degrees: 47.9, what: 'picture at two picture heights', source: 'ITU-R BS.775-3, screen 2'},
	{
		degrees: 58.4,
		what: '2160 lines resolved, a pixel to an arc-minute',
		source: 'ITU-R BT.2022',
	},
];

/** Largest angle off the screen's normal for a seat of a review room. @see SMPTE 196M-2003, clause 9 (seen in a mailing list, not in the standard). */
export const offNormalLimitDegrees = 15;

/** Width that a flat screen needs to fill an angle, metres, seen squarely from its middle. */
export function widthForDistance(distanceMetres: number, angleDegrees: number): number {
	return 2 * distanceMetres * Math.tan(angleDegrees / degrees / 2);
}

/** Distance at which a flat screen fills an angle, metres, seen squarely from its middle. */
export function distanceForWidth(widthMetres: number, angleDegrees: number): number {
	return widthMetres / (2 * Math.tan(angleDegrees / degrees / 2));
}

/**
Distance, in picture heights, at which two neighbouring pixels are one arc-minute apart.

@see ITU-R BT.500 and BT.2022: design viewing distance.
*/
export function designViewingDistance(pictureLines: number): number {
	return 1 / (pictureLines * Math.tan(1 / 60 / degrees));
}

export type SeatView = {
	readonly seat: string;
	/** Between the picture's left and right edge, degrees. */
	readonly horizontalDegrees: number;
	readonly verticalDegrees: number;
	/** Between the line to the picture's centre and its normal, horizontally. */
	readonly offNormalDegrees: number;
	/** Straight to the picture's centre, metres. */
	readonly distanceMetres: number;
	readonly distanceInHeights: number;
	/** The recommendations that this seat meets or exceeds. */
	readonly meets: readonly Recommendation[];
};

export type ScreenReport = {
	readonly widthMetres: number;
	readonly heightMetres: number;
	readonly seats: readonly SeatView[];
	/** At the reference seat: the distance and the width for each recommendation. */
	readonly sizes: ReadonlyArray<
		Recommendation & {readonly distanceMetres: number; readonly widthMetres: number}
	>;
	/** Height of the front centre speaker above (+) or below (−) the ear and the picture's edge, metres. */
	readonly centre?: {
		readonly aboveEarMetres: number;
		/** Above the picture's upper edge, below its lower one, or behind it. */
		readonly where: 'above' | 'below' | 'behind';
		readonly fromPictureCentreMetres: number;
		/** Elevation of the speaker minus elevation of the picture's centre, degrees, at the reference seat. */
		readonly apartDegrees: number;
	};
};

/**
The picture as each seat sees it. The screen hangs parallel to the front wall.

@returns Undefined where the screen's size or place is not known.
*/
export function screenReport(profile: Profile, result: NetworkResult): ScreenReport | undefined {
	const {screen} = profile;
	const middle = result.points.find(({kind}) => kind === 'screen');
	if (!screen || !middle || !isKnown(middle)) return undefined;
	const widthMetres = screen.widthMetres ?? (screen.heightMetres ?? 0) * usualShape;
	const heightMetres = screen.heightMetres ?? widthMetres / usualShape;
	if (widthMetres === 0) return undefined;
	const seats = result.points.filter(point => point.kind === 'seat' && isKnown(point));
	const views = seats.map(({id, at}): SeatView => {
		const across = at[0] - middle.at[0];
		const away = at[1] - middle.at[1];
		const up = at[2] - middle.at[2];
		const flat = Math.hypot(across, away);
		const horizontal =
			Math.atan2(across + widthMetres / 2, away) - Math.atan2(across - widthMetres / 2, away);
		const vertical = Math.atan2(up + heightMetres / 2, flat) - Math.atan2(up - heightMetres / 2, flat);
		const distanceMetres = Math.hypot(across, away, up);
		return {
			seat: id,
			horizontalDegrees: horizontal * degrees,
			verticalDegrees: vertical * degrees,
			offNormalDegrees: Math.abs(Math.atan2(across, away)) * degrees,
			distanceMetres,
			distanceInHeights: distanceMetres / heightMetres,
			meets: recommendations.filter(one => horizontal * degrees >= one.degrees),
		};
	});
	const reference = seats[0];
	const centre = result.points.find(point => point.id === 'FC' && isKnown(point));
	const above = centre ? centre.at[2] - middle.at[2] : 0;
	const elevation = (to: readonly [number, number, number]) =>
		reference
			? Math.atan2(to[2] - reference.at[2], Math.hypot(to[0] - reference.at[0], to[1] - reference.at[1])) *
				degrees
			: 0;
	return {
		widthMetres,
		heightMetres,
		seats: views,
		sizes: views[0]
			? recommendations.map(one => ({
					...one,
					distanceMetres: distanceForWidth(widthMetres, one.degrees),
					widthMetres: widthForDistance(views[0]!.distanceMetres, one.degrees),
				}))
			: [],
		...(centre &&
			reference && {
				centre: {
					aboveEarMetres: centre.at[2] - reference.at[2],
					where: above > heightMetres / 2 ? 'above' : above < -heightMetres / 2 ? 'below' : 'behind',
					fromPictureCentreMetres: above,
					apartDegrees: elevation(centre.at) - elevation(middle.at),
				},
			}),
	};
}
