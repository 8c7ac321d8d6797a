import type {Room} from '../../profile/types.ts';
import type {RoomShape} from '../room/shape.ts';

/** A rectangle of the floor where nothing may be put, and why. */
export type KeepOut = {
	readonly left: number;
	readonly right: number;
	readonly near: number;
	readonly far: number;
	readonly kind: Feature['kind'];
	readonly note?: string;
};

type Feature = NonNullable<Room['features']>[number];

/** How far from its wall each kind needs the floor, metres, where its entry does not say. Common practice, no source. */
const depthMetres: Readonly<Record<Feature['kind'], number>> = {
	door: 0.9,
	opening: 0.9,
	window: 0,
	radiator: 0.3,
	furniture: 0.5,
	walkway: 0,
	notHere: 0.6,
};

/** What hangs on a wall above this leaves the floor below it free, metres: the height of a usual subwoofer. */
const subHeightMetres = 0.5;

/** What stands in the way on the floor, from the features of a room. Windows and what hangs high leave the floor free. */
export function keepOuts(features: readonly Feature[], {widthMetres, lengthMetres}: RoomShape): KeepOut[] {
	return features.flatMap((feature): KeepOut[] => {
		const about = {kind: feature.kind, ...(feature.note !== undefined && {note: feature.note})};
		if (feature.on === 'floor') {
			const {leftMetres: left, rightMetres: right, nearMetres: near, farMetres: far} = feature;
			return [{left, right, near, far, ...about}];
		}

		if ((feature.lowMetres ?? 0) >= subHeightMetres) return [];
		const depth = feature.swingMetres ?? depthMetres[feature.kind];
		const {fromMetres: from, toMetres: to} = feature;
		if (depth <= 0) return [];
		switch (feature.on) {
			case 'wall:left':
				return [{left: 0, right: depth, near: from, far: to, ...about}];
			case 'wall:right':
				return [{left: widthMetres - depth, right: widthMetres, near: from, far: to, ...about}];
			case 'wall:front':
				return [{left: from, right: to, near: 0, far: depth, ...about}];
			default:
				return [{left: from, right: to, near: lengthMetres - depth, far: lengthMetres, ...about}];
		}
	});
}

/** What a square thing of a given half width at a place would stand on; undefined where the floor is free. */
export function standsOn(
	keepOut: readonly KeepOut[],
	x: number,
	y: number,
	halfMetres: number,
): KeepOut | undefined {
	return keepOut.find(
		({left, right, near, far}) =>
			x + halfMetres > left && x - halfMetres < right && y + halfMetres > near && y - halfMetres < far,
	);
}

/** What is wrong with an entry of the room's features: a door wider than its wall, a rectangle turned inside out. */
export type FeatureFault = {
	readonly index: number;
	readonly fault: 'beyondWall' | 'noWidth' | 'noHeight';
	readonly metres: number;
};

/** Every entry that cannot be: what reaches beyond its wall or has no size. */
export function featureFaults(
	features: readonly Feature[],
	{widthMetres, lengthMetres}: RoomShape,
): FeatureFault[] {
	return features.flatMap((feature, index): FeatureFault[] => {
		const fault = (what: FeatureFault['fault'], metres: number) => [{index, fault: what, metres}];
		if (feature.on === 'floor') {
			if (feature.rightMetres <= feature.leftMetres) return fault('noWidth', feature.rightMetres);
			if (feature.farMetres <= feature.nearMetres) return fault('noWidth', feature.farMetres);
			if (feature.rightMetres > widthMetres + 0.01) return fault('beyondWall', feature.rightMetres);
			return feature.farMetres > lengthMetres + 0.01 ? fault('beyondWall', feature.farMetres) : [];
		}

		const wall = feature.on === 'wall:left' || feature.on === 'wall:right' ? lengthMetres : widthMetres;
		if (feature.toMetres <= feature.fromMetres) return fault('noWidth', feature.toMetres);
		if (feature.toMetres > wall + 0.01) return fault('beyondWall', feature.toMetres);
		return feature.highMetres !== undefined && feature.highMetres <= (feature.lowMetres ?? 0)
			? fault('noHeight', feature.highMetres)
			: [];
	});
}
