import type {LengthUnit} from '../../profile/types.ts';
import {formatLength} from '../../profile/units/length.ts';
import {type PlanPoint, type PlanScene, referencePoint, separation} from './scene.ts';

/** The floor plan in words, one sentence a point; for screen readers and plain output. */
export function planText(scene: PlanScene, lengthUnit: LengthUnit): string[] {
	const length = (metres: number) => formatLength(metres, lengthUnit);
	const seat = referencePoint(scene);
	return [
		`Room: ${roomText(scene, lengthUnit)}.`,
		...scene.points.map(point => pointText(point, scene, seat, length)),
	];
}

/** The room's size on one line. */
export function roomText({room}: PlanScene, lengthUnit: LengthUnit): string {
	const length = (metres: number) => formatLength(metres, lengthUnit);
	const {widthMetres, lengthMetres, ceiling} = room;
	const parts = [
		widthMetres === undefined ? 'width not known' : `${length(widthMetres)} wide`,
		lengthMetres === undefined ? 'length not known' : `${length(lengthMetres)} long`,
	];
	if (ceiling?.kind === 'flat') parts.push(`ceiling ${length(ceiling.heightMetres)}`);
	if (ceiling?.kind === 'sloped') {
		const [first, second] =
			ceiling.between === 'wall:left-wall:right' ? ['left', 'right'] : ['front', 'back'];
		const [one, other] = ceiling.heightsMetres;
		parts.push(`ceiling ${length(one)} ${first}, ${length(other)} ${second}`);
	}

	return parts.join(', ');
}

function pointText(
	point: PlanPoint,
	scene: PlanScene,
	seat: PlanPoint | undefined,
	length: (metres: number) => string,
): string {
	const {widthMetres} = scene.room;
	const name = point.name ?? point.label;
	const isRight = widthMetres !== undefined && point.x > widthMetres / 2;
	const side = isRight
		? `${length(widthMetres - point.x)} from the right wall`
		: `${length(point.x)} from the left wall`;
	const parts = [`${name}: ${side}, ${length(point.y)} from the screen wall, ${length(point.z)} up`];
	if (seat && point !== seat) parts.push(`${length(separation(point, seat))} to ${seat.name ?? seat.label}`);
	if (point.aim) parts.push(`aimed at ${aimText(point, scene, length)}`);
	if (point.ellipse) parts.push(`known to ± ${length(point.ellipse.majorMetres)}`);
	return `${parts.join('; ')}.`;
}

/** The seat that a speaker is aimed at where there is one within a hand's breadth, else the place. */
function aimText({aim}: PlanPoint, scene: PlanScene, length: (metres: number) => string): string {
	if (!aim) return '';
	const seat = scene.points.find(({kind, ...place}) => kind === 'seat' && separation(place, aim) < 0.1);
	if (seat) return seat.name ?? seat.label;
	return `the place ${length(aim.x)} from the left wall, ${length(aim.y)} from the screen wall, ${length(aim.z)} up`;
}
