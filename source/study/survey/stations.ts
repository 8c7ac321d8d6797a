import {isOverhead} from '../../profile/channels.ts';
import type {SurveyNetwork} from './network.ts';
import type {NetworkPoint, SurveyInput} from './points.ts';
import {nominalDirection} from './starts.ts';

/** What is read at one place before the next is begun. */
export type Station = {
	readonly id: string;
	/** What places it, in order, then what checks that, in order. */
	readonly place: readonly string[];
	readonly check: readonly string[];
};

/** Speakers in the order of a round through the room: from the front centre to the right, around and back. */
function roundOrder(profile: SurveyInput, points: readonly NetworkPoint[]): NetworkPoint[] {
	const turn = ({id}: NetworkPoint) => {
		const azimuth = nominalDirection(profile, id)?.azimuthDegrees;
		return azimuth === undefined ? 400 : (360 - azimuth) % 360;
	};
	return points.filter(({kind}) => kind === 'speaker' || kind === 'sub').sort((a, b) => turn(a) - turn(b));
}

/** The sizes of the room that are not stated: heights are checked against the ceiling, the far walls against the near. */
export function roomReadings({
	widthMetres,
	lengthMetres,
	ceiling,
}: SurveyInput['room']): Array<{readonly from: string; readonly to: string}> {
	const sizes: Array<[unknown, string, string]> = [
		[widthMetres, 'wall:left', 'wall:right'],
		[lengthMetres, 'wall:front', 'wall:back'],
		[ceiling, 'floor', 'ceiling'],
	];
	return sizes.filter(([stated]) => stated === undefined).map(([, from, to]) => ({from, to}));
}

/**
Everything that is read at each thing, in the order of one walk: the seat, the screen, once around the speakers, then
the other seats.
*/
export function stationsOf({profile, points}: SurveyNetwork): Station[] {
	const [seat, ...others] = points.filter(({kind}) => kind === 'seat') as [NetworkPoint, ...NetworkPoint[]];
	const around = roundOrder(profile, points).map(({id}): Station => {
		const azimuth = nominalDirection(profile, id)?.azimuthDegrees ?? 0;
		const [height, otherHeight] = isOverhead(id) ? ['ceiling', 'floor'] : ['floor', 'ceiling'];
		const [side, otherSide] = azimuth < 0 ? ['wall:right', 'wall:left'] : ['wall:left', 'wall:right'];
		const [ahead, behind] =
			Math.abs(azimuth) > 90 ? ['wall:back', 'wall:front'] : ['wall:front', 'wall:back'];
		// The distance to the seat checks what lies along it; across it the other wall does.
		const isAside = Math.abs(Math.sin((azimuth * Math.PI) / 180)) > Math.SQRT1_2;
		const far = isAside ? [behind, otherSide] : [otherSide, behind];
		return {id, place: [seat.id, height!, side!, ahead!], check: [otherHeight!, ...(far as string[])]};
	});
	return [
		{id: seat.id, place: ['floor', 'wall:left', 'wall:back'], check: ['ceiling', 'wall:right', 'wall:front']},
		{
			id: 'screen',
			place: ['floor', 'wall:left', 'wall:front'],
			check: [seat.id, 'ceiling', 'wall:right', 'wall:back'],
		},
		...around,
		...others.map(({id}) => ({
			id,
			place: ['floor', 'wall:left', 'wall:back'],
			check: [seat.id, 'ceiling', 'wall:right', 'wall:front'],
		})),
	];
}
