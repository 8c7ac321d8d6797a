import type {Vector} from './vectors.ts';

/** Azimuth positive to the left, elevation positive up, degrees. */
export type Direction = {readonly azimuthDegrees: number; readonly elevationDegrees: number};

const degrees = 180 / Math.PI;

/** An angle brought to −180° (excluded) to 180°. */
export function wrapDegrees(angle: number): number {
	const turned = ((angle % 360) + 360) % 360;
	return turned > 180 ? turned - 360 : turned;
}

/**
Direction of a vector against straight ahead, which is −y, from the back to the screen wall.

@see ITU-R BS.2051, sign conventions: azimuth positive to the listener's left, elevation positive up.
*/
export function directionOf([x, y, z]: Vector): Direction {
	return {
		azimuthDegrees: Math.atan2(-x, -y) * degrees,
		elevationDegrees: Math.atan2(z, Math.hypot(x, y)) * degrees,
	};
}

/** Unit vector of a direction. */
export function unitVector({azimuthDegrees, elevationDegrees}: Direction): Vector {
	const azimuth = azimuthDegrees / degrees;
	const elevation = elevationDegrees / degrees;
	return [
		-Math.sin(azimuth) * Math.cos(elevation),
		-Math.cos(azimuth) * Math.cos(elevation),
		Math.sin(elevation),
	];
}
