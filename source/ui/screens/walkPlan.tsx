import type {Profile} from '../../profile/types.ts';
import {wrap} from '../../report/wrap.ts';
import {Lines} from '../parts/lines.tsx';
import {Plan} from '../parts/plan.tsx';
import {lengthUnitOf} from '../walk/lengthUnits.ts';
import {sceneOf} from '../walk/sceneOf.ts';

type Props = {readonly profile: Profile; readonly columns: number; readonly rows: number};

const nothingYet =
	'No plan yet. It needs distances from speakers to the seat and to walls; each reading at the stop Tape adds to it.';

/** The floor plan in the place of a question, as far as the tape tells where things stand. */
export function WalkPlan({profile, columns, rows}: Props) {
	const scene = sceneOf(profile);
	if (scene.points.length < 2) {
		return <Lines columns={columns} lines={wrap(nothingYet, columns, '  ').map(text => ({text}))} />;
	}

	return <Plan scene={scene} lengthUnit={lengthUnitOf(profile)} columns={columns} rows={rows} />;
}
