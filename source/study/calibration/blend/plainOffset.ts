import type {BlendInputs} from './inputs.ts';
import type {SubsOffset} from './offset.ts';
import {plainlyTurned} from './plainPolarities.ts';
import {subLines} from './subsState.ts';

/**
How all subs stand by distances alone: they arrive at once and with the front speakers, each line turned as the settings
leave it without a blend. A lead that is known to be reversed at one sub stays mended so.

@param fronts - Front speakers that the subs are blended with; polarity is against the first.
*/
export function plainOffset({profile, arrivalsMs}: BlendInputs, fronts: readonly string[]): SubsOffset {
	const isTurned = plainlyTurned(profile);
	const turned = subLines(profile, arrivalsMs).map(({line}) => isTurned(line));
	const [first = false] = turned;
	const front = fronts[0] !== undefined && isTurned({channel: fronts[0]});
	return {
		laterMs: 0,
		inverted: first !== front,
		relation: turned.map(each => ({apartMs: 0, isTurned: each !== first})),
	};
}
