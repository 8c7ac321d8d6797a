import type {PlanPoint, PlanScene} from '../../../source/report/plan.ts';

const speaker = (id: string, x: number, y: number, z: number, name: string): PlanPoint => ({
	id,
	label: id,
	name,
	kind: 'speaker',
	x,
	y,
	z,
});

/** An invented attic room: 4.05 m by 5.3 m, the ceiling falling to the back, seven speakers, two subs, two seats. */
export function exampleScene(changes: Partial<PlanScene> = {}): PlanScene {
	const ear = {x: 2.02, y: 3.45, z: 1.05};
	return {
		room: {
			widthMetres: 4.05,
			lengthMetres: 5.3,
			ceiling: {kind: 'sloped', between: 'wall:front-wall:back', heightsMetres: [2.62, 1.98]},
		},
		points: [
			{
				id: 'screen',
				label: 'screen',
				name: 'Screen',
				kind: 'screen',
				x: 2.02,
				y: 0.06,
				z: 1.3,
				widthMetres: 2.1,
				heightMetres: 1.18,
			},
			{...speaker('FL', 0.75, 0.5, 0.98, 'Front left'), aim: ear},
			{...speaker('FR', 3.3, 0.5, 0.98, 'Front right'), aim: ear},
			speaker('FC', 2.02, 0.35, 0.55, 'Front centre'),
			{
				...speaker('LS', 0.25, 4, 1.35, 'Left surround'),
				ellipse: {majorMetres: 0.3, minorMetres: 0.1, angleDegrees: 60},
			},
			speaker('RS', 3.8, 4, 1.35, 'Right surround'),
			speaker('TpSiL', 1.1, 3.1, 2.2, 'Top side left'),
			speaker('TpSiR', 2.95, 3.1, 2.2, 'Top side right'),
			{id: 'sub1', label: 'sub1', name: 'Front sub', kind: 'sub', x: 0.35, y: 0.3, z: 0.25},
			{id: 'sub2', label: 'sub2', name: 'Back sub', kind: 'sub', x: 3.7, y: 5, z: 0.25},
			{id: 'sofa', label: 'sofa', name: 'Sofa middle', kind: 'seat', reference: true, ...ear},
			{id: 'left', label: 'left', name: 'Sofa left', kind: 'seat', x: 1.35, y: 3.45, z: 1.05},
		],
		...changes,
	};
}
